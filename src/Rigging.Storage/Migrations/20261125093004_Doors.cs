using System;
using Microsoft.EntityFrameworkCore.Migrations;
using NodaTime;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Rigging.Storage.Migrations
{
    /// <inheritdoc />
    public partial class Doors : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<Guid>(
                name: "guest_of",
                table: "person",
                type: "uuid",
                nullable: true);

            migrationBuilder.AddColumn<Instant>(
                name: "guest_until",
                table: "person",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<Instant>(
                name: "left_at",
                table: "person",
                type: "timestamp with time zone",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "ratings",
                table: "certificate",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<string>(
                name: "recent_because",
                table: "certificate",
                type: "text",
                nullable: true);

            migrationBuilder.AddColumn<LocalDate>(
                name: "recent_until",
                table: "certificate",
                type: "date",
                nullable: true);

            migrationBuilder.CreateTable(
                name: "invitation",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    code_sha256 = table.Column<string>(type: "text", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    made_by = table.Column<Guid>(type: "uuid", nullable: false),
                    made_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    expires_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    used_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_invitation", x => x.id);
                    table.ForeignKey(
                        name: "fk_invitation_people_made_by",
                        column: x => x.made_by,
                        principalTable: "person",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                    table.ForeignKey(
                        name: "fk_invitation_people_person_id",
                        column: x => x.person_id,
                        principalTable: "person",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "security_event",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityAlwaysColumn),
                    at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    whom = table.Column<Guid>(type: "uuid", nullable: true),
                    by = table.Column<Guid>(type: "uuid", nullable: true),
                    address = table.Column<string>(type: "text", nullable: true),
                    about = table.Column<string>(type: "text", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_security_event", x => x.id);
                });

            migrationBuilder.CreateTable(
                name: "session",
                columns: table => new
                {
                    id = table.Column<Guid>(type: "uuid", nullable: false),
                    person_id = table.Column<Guid>(type: "uuid", nullable: false),
                    started_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    seen_at = table.Column<Instant>(type: "timestamp with time zone", nullable: false),
                    method = table.Column<string>(type: "text", nullable: false),
                    address = table.Column<string>(type: "text", nullable: true),
                    device = table.Column<string>(type: "text", nullable: true),
                    ended_at = table.Column<Instant>(type: "timestamp with time zone", nullable: true)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_session", x => x.id);
                    table.ForeignKey(
                        name: "fk_session_people_person_id",
                        column: x => x.person_id,
                        principalTable: "person",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateTable(
                name: "user_passkey",
                columns: table => new
                {
                    credential_id = table.Column<byte[]>(type: "bytea", maxLength: 1024, nullable: false),
                    user_id = table.Column<Guid>(type: "uuid", nullable: false),
                    data = table.Column<string>(type: "jsonb", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_user_passkey", x => x.credential_id);
                    table.ForeignKey(
                        name: "fk_user_passkey_asp_net_users_user_id",
                        column: x => x.user_id,
                        principalTable: "user",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Cascade);
                });

            migrationBuilder.CreateIndex(
                name: "ix_person_guest_of",
                table: "person",
                column: "guest_of");

            migrationBuilder.CreateIndex(
                name: "ix_invitation_code_sha256",
                table: "invitation",
                column: "code_sha256",
                unique: true);

            migrationBuilder.CreateIndex(
                name: "ix_invitation_made_by",
                table: "invitation",
                column: "made_by");

            migrationBuilder.CreateIndex(
                name: "ix_invitation_person_id",
                table: "invitation",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_security_event_at",
                table: "security_event",
                column: "at");

            migrationBuilder.CreateIndex(
                name: "ix_session_person_id",
                table: "session",
                column: "person_id");

            migrationBuilder.CreateIndex(
                name: "ix_user_passkey_user_id",
                table: "user_passkey",
                column: "user_id");

            migrationBuilder.AddForeignKey(
                name: "fk_person_squawk_guest_of",
                table: "person",
                column: "guest_of",
                principalTable: "squawk",
                principalColumn: "id");

            migrationBuilder.Sql("""
                create trigger security_event_append_only before update or delete or truncate on security_event
                    for each statement execute function append_only();
                """);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropForeignKey(
                name: "fk_person_squawk_guest_of",
                table: "person");

            migrationBuilder.DropTable(
                name: "invitation");

            migrationBuilder.DropTable(
                name: "security_event");

            migrationBuilder.DropTable(
                name: "session");

            migrationBuilder.DropTable(
                name: "user_passkey");

            migrationBuilder.DropIndex(
                name: "ix_person_guest_of",
                table: "person");

            migrationBuilder.DropColumn(
                name: "guest_of",
                table: "person");

            migrationBuilder.DropColumn(
                name: "guest_until",
                table: "person");

            migrationBuilder.DropColumn(
                name: "left_at",
                table: "person");

            migrationBuilder.DropColumn(
                name: "ratings",
                table: "certificate");

            migrationBuilder.DropColumn(
                name: "recent_because",
                table: "certificate");

            migrationBuilder.DropColumn(
                name: "recent_until",
                table: "certificate");
        }
    }
}
