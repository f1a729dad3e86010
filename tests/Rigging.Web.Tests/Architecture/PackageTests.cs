using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Xml.Linq;

namespace Rigging.Web.Tests.Architecture;

/// <summary>
/// What the program ships that others wrote stands in docs/packages.md with version and licence. The list is made by
/// <c>RIGGING_WRITE_PACKAGES=1</c> and this class; it fails when a version was changed and the list, and so its reader, was not asked.
/// </summary>
public sealed class PackageTests
{
    static readonly string[] Free = ["MIT", "MIT-0", "Apache-2.0", "PostgreSQL", "MS-PL OR Apache-2.0"];

    static readonly string ListFile = Path.Combine(Repository.Home, "docs", "packages.md");

    [Fact]
    public void Every_package_of_the_program_is_listed_with_its_version_and_licence()
    {
        var list = Written();
        if (Environment.GetEnvironmentVariable("RIGGING_WRITE_PACKAGES") is { Length: > 0 }) File.WriteAllText(ListFile, list);

        Assert.Equal(list, File.ReadAllText(ListFile).ReplaceLineEndings("\n"));
    }

    [Fact]
    public void Every_licence_lets_the_program_be_given_on_under_its_own() =>
        Assert.All(Packages(), package => Assert.Contains(package.Licence, Free));

    [Fact]
    public void Every_version_that_is_pinned_is_used_by_a_project()
    {
        var used = Directory.EnumerateDirectories(Path.Combine(Repository.Home, "artifacts", "obj"))
            .Select(folder => Path.Combine(folder, "project.assets.json")).Where(File.Exists)
            .SelectMany(file =>
            {
                using var assets = JsonDocument.Parse(File.ReadAllText(file));
                return assets.RootElement.GetProperty("libraries").EnumerateObject().Select(library => library.Name.Split('/')[0]).ToList();
            }).ToHashSet();
        var pinned = XDocument.Load(Path.Combine(Repository.Home, "Directory.Packages.props")).Descendants("PackageVersion").Select(version => version.Attribute("Include")!.Value);

        Assert.DoesNotContain(pinned, package => !used.Contains(package));
    }

    sealed record Package(string Name, string Version, string Licence);

    static string Written()
    {
        var text = new StringBuilder("""
            # Packages

            What the program ships that others wrote, direct and indirect, with the licence each package states. Made by a command
            (see `PackageTests`), held by a test: a new version is a change of this page that somebody reads.

            Each restore asks the registry for known holes (`NuGetAudit`); a registry that has no such list says so and stops nothing.
            Versions move when a hole is told, and otherwise before each release: raise them in `Directory.Packages.props`, run
            `./test.sh`, make this list anew.

            | package | version | licence |
            |---|---|---|

            """.ReplaceLineEndings("\n"));
        foreach (var package in Packages()) text.Append(CultureInfo.InvariantCulture, $"| {package.Name} | {package.Version} | {package.Licence} |\n");
        return text.ToString();
    }

    static List<Package> Packages()
    {
        using var assets = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository.Home, "artifacts", "obj", "Rigging.Web", "project.assets.json")));
        var folders = assets.RootElement.GetProperty("packageFolders").EnumerateObject().Select(folder => folder.Name).ToList();
        return [.. assets.RootElement.GetProperty("libraries").EnumerateObject().Where(library => library.Value.GetProperty("type").GetString() == "package")
            .Select(library =>
            {
                var path = library.Value.GetProperty("path").GetString()!;
                var folder = folders.Select(root => Path.Combine(root, path)).First(Directory.Exists);
                var (name, version) = library.Name.Split('/') is [var n, var v] ? (n, v) : throw new InvalidDataException(library.Name);
                return new Package(name, version, Licence(XDocument.Load(Directory.EnumerateFiles(folder, "*.nuspec").Single())));
            })
            // Comes with the SDK, whichever that is.
            .Where(package => package.Name != "Microsoft.AspNetCore.App.Internal.Assets")
            .OrderBy(package => package.Name, StringComparer.OrdinalIgnoreCase)];
    }

    static string Licence(XDocument nuspec)
    {
        var metadata = nuspec.Root!.Elements().Single(element => element.Name.LocalName == "metadata");
        string? Of(string name) => metadata.Elements().FirstOrDefault(element => element.Name.LocalName == name)?.Value;
        return metadata.Elements().FirstOrDefault(element => element.Name.LocalName == "license") is { } licence
            && licence.Attribute("type")?.Value == "expression" ? licence.Value : Of("licenseUrl") ?? Of("license") ?? "none stated";
    }
}
