using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Rigging.Storage.Migrations
{
    /// <inheritdoc />
    public partial class ToolResolution : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<double>(
                name: "resolution",
                table: "tool",
                type: "double precision",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "resolution",
                table: "tool");
        }
    }
}
