using Microsoft.EntityFrameworkCore;
using Rigging.Storage;

namespace Rigging.Web.Commands;

/// <summary>For commands, which work on one database and end.</summary>
sealed class OneDatabase(string connection) : IDbContextFactory<RiggingDb>
{
    public RiggingDb CreateDbContext() => RiggingDb.Open(connection);
}
