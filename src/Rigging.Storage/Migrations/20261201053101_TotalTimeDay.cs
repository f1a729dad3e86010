using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Rigging.Storage.Migrations
{
    /// <inheritdoc />
    public partial class TotalTimeDay : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<LocalDate>(
                name: "total_time_on",
                table: "aircraft",
                type: "date",
                nullable: true);

            // What is on record today is what is known of today.
            migrationBuilder.Sql("update aircraft set total_time_on = current_date");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "total_time_on",
                table: "aircraft");
        }
    }
}
