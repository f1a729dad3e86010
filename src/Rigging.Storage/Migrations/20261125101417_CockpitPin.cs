using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Rigging.Storage.Migrations
{
    /// <inheritdoc />
    public partial class CockpitPin : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "cockpit_pin_hash",
                table: "installation",
                type: "text",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "cockpit_pin_hash",
                table: "installation");
        }
    }
}
