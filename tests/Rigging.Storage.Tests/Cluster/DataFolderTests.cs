using Rigging.Storage.Cluster;

namespace Rigging.Storage.Tests.Cluster;

public sealed class DataFolderTests : IDisposable
{
    readonly ScratchFolder scratch = new();

    public void Dispose() => scratch.Dispose();

    [Fact]
    public void A_folder_that_does_not_exist_is_made_and_marked()
    {
        using (DataFolder.Take(scratch.Data)) { }

        Assert.True(File.Exists(Path.Combine(scratch.Data, DataFolder.MarkerName)));
    }

    [Fact]
    public void An_empty_folder_is_taken()
    {
        Directory.CreateDirectory(scratch.Data);

        using var folder = DataFolder.Take(scratch.Data);

        Assert.Equal(scratch.Data, folder.Path);
    }

    [Fact]
    public void Our_own_folder_is_taken_again()
    {
        using (DataFolder.Take(scratch.Data))
            File.WriteAllText(Path.Combine(scratch.Data, "something"), "of ours");

        using var again = DataFolder.Take(scratch.Data);
    }

    [Fact]
    public void A_folder_with_other_files_is_refused_and_left_alone()
    {
        Directory.CreateDirectory(scratch.Data);
        File.WriteAllText(Path.Combine(scratch.Data, "thesis.txt"), "years of work");

        var refused = Assert.Throws<StartRefusedException>(() => DataFolder.Take(scratch.Data));

        Assert.Contains($"'{scratch.Data}' holds other files (for one 'thesis.txt')", refused.Message, StringComparison.Ordinal);
        Assert.Contains("wanted: an empty folder", refused.Message, StringComparison.Ordinal);
        Assert.Equal(["thesis.txt"], Directory.GetFileSystemEntries(scratch.Data).Select(Path.GetFileName));
    }

    [Fact]
    public void A_file_is_refused()
    {
        File.WriteAllText(scratch.Data, "");

        var refused = Assert.Throws<StartRefusedException>(() => DataFolder.Take(scratch.Data));

        Assert.Contains("is a file; wanted: a folder", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_marker_of_another_form_is_refused()
    {
        Directory.CreateDirectory(scratch.Data);
        File.WriteAllText(Path.Combine(scratch.Data, DataFolder.MarkerName), "Rigging data, form 99.");

        Assert.Throws<StartRefusedException>(() => DataFolder.Take(scratch.Data));
    }

    [Fact]
    public void Two_programs_cannot_hold_one_folder()
    {
        using var folder = DataFolder.Take(scratch.Data);

        var refused = Assert.Throws<StartRefusedException>(() => DataFolder.Take(scratch.Data));

        Assert.Contains("in use by another Rigging", refused.Message, StringComparison.Ordinal);
    }
}
