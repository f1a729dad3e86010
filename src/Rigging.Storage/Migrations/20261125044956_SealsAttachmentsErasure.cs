using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;

#nullable disable

namespace Rigging.Storage.Migrations
{
    /// <inheritdoc />
    public partial class SealsAttachmentsErasure : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Instant>(
                name: "erased_at",
                table: "person",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "attachment",
                columns: table => new
                {
                    sha256 = table.Column<byte[]>(type: "bytea", nullable: false),
                    media_type = table.Column<string>(type: "text", nullable: false),
                    bytes = table.Column<byte[]>(type: "bytea", nullable: false),
                    stored_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false, defaultValueSql: "now()")
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_attachment", x => x.sha256);
                    table.CheckConstraint("ck_attachment_sha256", "sha256 = sha256(bytes)");
                });

            migrationBuilder.CreateTable(
                name: "seal",
                columns: table => new
                {
                    number = table.Column<int>(type: "integer", nullable: false),
                    day = table.Column<LocalDate>(type: "date", nullable: false),
                    sealed_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    ledgers = table.Column<int>(type: "integer", nullable: false),
                    entries = table.Column<int>(type: "integer", nullable: false),
                    text = table.Column<string>(type: "text", nullable: false),
                    hash = table.Column<byte[]>(type: "bytea", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_seal", x => x.number);
                    table.CheckConstraint("ck_seal_hash", "octet_length(hash) = 32");
                });

            // Rights keep the application out; the triggers also stop the owner's slip of hand.
            migrationBuilder.Sql("""
                create function append_only() returns trigger language plpgsql as $$
                begin
                    raise exception '% is added to and never changed', tg_table_name using errcode = 'insufficient_privilege';
                end $$;
                create trigger seal_append_only before update or delete or truncate on seal
                    for each statement execute function append_only();
                create trigger attachment_append_only before update or delete or truncate on attachment
                    for each statement execute function append_only();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "attachment");

            migrationBuilder.DropTable(
                name: "seal");

            migrationBuilder.Sql("drop function append_only()");

            migrationBuilder.DropColumn(
                name: "erased_at",
                table: "person");
        }
    }
}
