using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Tests;
using Rigging.Web.Story;

namespace Rigging.Web.Tests.Story;

public class EntryStoryTests
{
    public static TheoryData<string> Kinds => [.. EntryCodec.Kinds];

    /// <summary>One stored payload of each kind, as frozen for the codec.</summary>
    static Fact Stored(string kind) =>
        EntryCodec.Read(1, kind, 1, File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "payloads", $"{kind}.1.json"))).Fact;

    [Theory, MemberData(nameof(Kinds))]
    public void Every_kind_of_entry_has_words(string kind)
    {
        var fact = Stored(kind);

        var told = EntryStory.Of(fact);

        Assert.IsNotType<NewerEntry>(fact);
        Assert.False(string.IsNullOrWhiteSpace(told.Title));
        Assert.NotEmpty(told.Lines);
        Assert.All(told.Lines, line => Assert.False(string.IsNullOrWhiteSpace(line.Text)));
        Assert.DoesNotContain("NaN", Text(told), StringComparison.Ordinal);
    }

    [Fact]
    public void An_entry_from_a_newer_program_says_so()
    {
        var told = EntryStory.Of(new NewerEntry("wing-walk", 3, "{}"));

        Assert.Contains("wing-walk", Text(told), StringComparison.Ordinal);
        Assert.Equal(Tone.Caution, told.Lines[0].Tone);
    }

    [Fact]
    public void A_report_keeps_the_words_says_the_sides_and_names_what_nobody_wrote_down()
    {
        var told = EntryStory.Of(Report);

        Assert.Equal(new Line("pulls  left – quite annoying", Tone.Quoted), told.Lines[0]);
        Assert.Contains("Rolls left slowly, hands off, feet keeping the ball centred.", Lines(told));
        Assert.Contains("At 95\u202Fkt.", Lines(told));
        Assert.Contains("Read: 6° left wing down after 10\u202Fs; ball 0.5\u202Fwidth right of centre.", Lines(told));
        Assert.Contains("Fuel left 25\u202FL (6.6\u202FUS\u202Fgal), right 30\u202FL (7.9\u202FUS\u202Fgal), dipped.", Lines(told));
        Assert.Contains(told.Lines, line => line.Tone == Tone.Missing && line.Text.Contains("altitude", StringComparison.Ordinal) && !line.Text.Contains("speed", StringComparison.Ordinal));
    }

    [Theory, InlineData(1, "; 1 man hour."), InlineData(2.5, "; 2.5 man hours.")]
    public void One_man_hour_is_one(double hours, string said) =>
        Assert.EndsWith(said, EntryStory.Of(School.Done with { ManHours = hours }).Lines[^1].Text, StringComparison.Ordinal);

    [Fact]
    public void A_fork_as_found_says_nothing_of_an_eccentric() =>
        Assert.Equal(["Left rear strut fork 9 turns out from fully in."], Lines(EntryStory.Of(new AsFound(new(null, null, null, null), null, Adjusters: [new(Control.LeftStrutFork, 9)]))));

    [Fact]
    public void A_red_flag_is_said_as_a_stop()
    {
        var told = EntryStory.Of(Report with { RedFlags = [RedFlag.Bang, RedFlag.BothHands] });

        Assert.Contains(told.Lines, line => line.Tone == Tone.Stop && line.Text.Contains("a bang; both hands needed", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(Check.FlapDifference, -0.2, "Left flap 0.2° lower")]
    [InlineData(Check.PanelIncidenceDifference, 0.08, "Right panel 0.08° more incidence")]
    [InlineData(Check.BallOffset, -0.5, "Ball 0.5\u202Fwidth left of centre with the airframe level")]
    [InlineData(Check.RudderTab, 2, "Rudder tab 2° trailing edge left")]
    [InlineData(Check.AileronFloat, 1, "Ailerons float 1° towards right wing down")]
    [InlineData(Check.CableTension, 160, "left aileron: 160\u202FN (36\u202Flbf) at 18\u202F°C")]
    public void A_measurement_is_said_with_its_side(Check check, double value, string words)
    {
        var told = EntryStory.Of(new GroundChecked(check, value, null, null, "left aileron", 18, null, null, null, null, null, null));

        Assert.Contains(told.Lines, line => line.Text.StartsWith(words, StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public void Bushings_are_said_by_where_the_trailing_edge_goes_and_a_disagreement_is_a_caution()
    {
        var told = EntryStory.Of(new AsFound(new BushingAngles(-15, -15, 0, 10), null));

        Assert.Equal("Left wing eccentric, front and rear bushing: 15° trailing edge up.", told.Lines[0].Text);
        Assert.Equal(new Line("Right wing eccentric: front bushing neutral, rear bushing 10° trailing edge down.", Tone.Caution), told.Lines[1]);
    }

    [Fact]
    public void A_surface_that_went_the_wrong_way_is_said_as_a_stop()
    {
        var told = EntryStory.Of(new Inspected(false, [new("left aileron", "wheel left", Seen.Up, Seen.Down)], true, true, true, null, "Cables crossed."));

        Assert.Contains(new Line("Wheel left: the left aileron was seen to move down. It must move up.", Tone.Stop), told.Lines);
        Assert.DoesNotContain(told.Lines, line => line.Text.StartsWith("Seen at the surface", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_seen_at_the_surfaces_is_said_by_input()
    {
        var told = EntryStory.Of(new Inspected(true,
            [new("left aileron", "wheel left", Seen.Up, Seen.Up), new("right aileron", "wheel left", Seen.Down, Seen.Down), new("rudder", "left pedal", Seen.Left, Seen.Left)], true, true, true, null, "Seen."));

        Assert.Contains("Seen at the surface: wheel left, left aileron up, right aileron down; left pedal, rudder left.", Lines(told));
    }

    [Fact]
    public void Flight_readings_are_said_with_their_sides_and_what_cannot_be_read_is_said_to_be_so()
    {
        const string points = """
            [{"manoeuvre":"release-wheel","casKt":95,"pressureAltitudeFt":3000,"load":{"fuelL":{"left":20,"right":30}},
              "readings":[{"kind":"bank-after","seconds":10,"deg":-6},{"kind":"ball"},{"kind":"levitation"}]}]
            """;

        var line = EntryStory.Of(new EvaluationFlown(new(2026, 3, 2), points, null)).Lines[0].Text;

        Assert.Equal("Wheel let go, feet keeping the ball centred, 95\u202Fkt, 3000\u202Fft, fuel left 20\u202FL, right 30\u202FL: "
            + "6° left wing down after 10\u202Fs; a reading that cannot be shown here; a reading that cannot be shown here.", line);
        Assert.Equal("The readings cannot be read.", EntryStory.Of(new EvaluationFlown(new(2026, 3, 2), "{", null)).Lines[0].Text);
    }

    [Fact]
    public void How_the_trims_stood_is_said_of_both_flights_where_it_is_on_record_and_what_held_it_is_a_caution()
    {
        Assert.Contains(new Line("Trims and autopilot: roll trim neutral; autopilot off."), EntryStory.Of(School.Flight with { Trims = new(RollTrim.Neutral, null, FlownAutopilot.Off) }).Lines);
        Assert.Contains(new Line("Trims and autopilot: yaw trim off neutral, nose right.", Tone.Caution), EntryStory.Of(new EvaluationFlown(new(2026, 3, 2), "[]", null, new(null, YawTrim.NoseRight, null))).Lines);
        Assert.DoesNotContain(EntryStory.Of(School.Flight).Lines, line => line.Text.StartsWith("Trims", StringComparison.Ordinal));
    }

    [Fact]
    public void A_record_entry_is_shown_with_names_in_place()
    {
        var told = EntryStory.Of(new Approved("Work done by [person:x].", new(2026, 3, 2), 1200, true, null), text => text.Replace("[person:x]", "Mira", StringComparison.Ordinal));

        Assert.Contains(new Line("Work done by Mira.", Tone.Document), told.Lines);
    }

    static readonly Reported Report = new(1, new AircraftId(Guid.Empty), "pulls  left – quite annoying", Side.Left, RollStrength.Slowly, Hands.Released, Feet.BallCentred,
        95, null, null, null, 0.5, -6, 10, 25, 30, FuelMethod.Dip, null, null, null, null, null, [], []);

    static IEnumerable<string> Lines(Told told) => told.Lines.Select(line => line.Text);

    static string Text(Told told) => string.Join('\n', Lines(told).Prepend(told.Title));
}
