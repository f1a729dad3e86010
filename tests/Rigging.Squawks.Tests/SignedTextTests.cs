using System.Text.Json.Nodes;
using NodaTime.Text;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Ledgers;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;
using Rigging.Squawks.Signing;

namespace Rigging.Squawks.Tests;

/// <summary>What stands above a signature is all that it stands under.</summary>
public class SignedTextTests
{
    public static TheoryData<string> Signed => [.. EntryCodec.Kinds.Where(kind => MoveTable.IsSigned(EntryCodec.TypeOf(kind)))];

    static (Ledger Ledger, Person Who) Ready(string kind) => kind switch
    {
        "work-done" => (School.Torqued, School.Mechanic),
        "independent-inspection" => (School.Worked, School.Inspector),
        "approval" => (School.Inspected, School.Certifier),
        "check-flight" => (School.Approved, School.Pilot),
        "closing" => (School.Judged, School.Inspector),
        _ => (School.Called, School.Inspector),
    };

    /// <summary>The fact once for every value in it, with that one value changed; optional texts filled in first, so that they are there to change.</summary>
    static IEnumerable<(string Path, Fact Fact)> Altered(string kind, Fact fact)
    {
        var whole = JsonNode.Parse(EntryCodec.WriteFact(fact))!.AsObject();
        foreach (var path in Leaves(whole).ToList())
        {
            var copy = whole.DeepClone();
            var leaf = path.Aggregate(copy, (node, step) => step is int index ? node[index]! : node[(string)step]!);
            leaf.ReplaceWith(Other(leaf.AsValue()));
            Fact? altered = null;
            // A changed word for a choice is no choice at all.
            try { altered = EntryCodec.ReadFact(kind, copy.ToJsonString()); } catch (System.Text.Json.JsonException) { }
            if (altered is not null) yield return (string.Join('.', path), altered);
        }
    }

    static IEnumerable<object[]> Leaves(JsonNode node) => node switch
    {
        JsonObject branch => branch.SelectMany(pair => Leaves(pair.Value!).Select(rest => (object[])[pair.Key, .. rest])),
        JsonArray list => list.SelectMany((item, i) => Leaves(item!).Select(rest => (object[])[i, .. rest])),
        _ => [[]],
    };

    static JsonValue Other(JsonValue value) => value.GetValueKind() switch
    {
        System.Text.Json.JsonValueKind.True => JsonValue.Create(false),
        System.Text.Json.JsonValueKind.False => JsonValue.Create(true),
        System.Text.Json.JsonValueKind.Number => JsonValue.Create(value.GetValue<double>() + 1),
        _ => LocalDatePattern.Iso.Parse(value.GetValue<string>()) is { Success: true, Value: var day }
            ? JsonValue.Create(LocalDatePattern.Iso.Format(day.PlusDays(-1)))
            : JsonValue.Create(value.GetValue<string>() is ['[', ..] points ? " " + points : value.GetValue<string>() + " and more"),
    };

    const string Points = """
        [{"manoeuvre":"release-wheel","casKt":95,"pressureAltitudeFt":3000,"oatC":9,"powerPercent":65,"flapDeg":0,"load":{"seatsKg":{"left":77,"right":77},"fuelL":{"left":25,"right":30.5}},"air":"smooth","lastInput":"left","repeat":1,
          "readings":[{"kind":"bank-after","seconds":10,"deg":-6,"method":"stopwatch-horizon","sd":1.5},{"kind":"time-to-bank","deg":10,"seconds":14,"method":"eye"},{"kind":"roll-rate","degPerS":0.4,"method":"instrument"}]},
         {"manoeuvre":"hold-level","casKt":70,"pressureAltitudeFt":3000,"load":{"seatsKg":{"left":77,"right":77},"fuelL":{"left":25,"right":30.5}},
          "readings":[{"kind":"ball","widths":0.5},{"kind":"wheel-angle","deg":4},{"kind":"wheel-force","n":5},{"kind":"heading-rate","degPerS":0.2},{"kind":"heading-change","seconds":30,"deg":6},{"kind":"rolls","side":"left","strength":"slowly"}]}]
        """;

    static Fact Full(string kind) => MovesOnPaper.Example(kind) switch
    {
        WorkDone done => done with
        {
            AsLeft = new(45, 45, 0, 0),
            OtherAsLeft = "Tab straight.",
            DiffersBecause = "It only tightened there.",
            Movements = [School.SeenDown with { Amount = 0.9, Aft = 880, OtherwiseBecause = "The dial touched the fairing." }]
        },
        CheckFlown flown => flown with { TestPoints = Points, SecondCrewDuty = "writes", StallsFlown = false, StallsNotFlownBecause = "Cloud.", EveryFlapSetting = false, FlapsNotFlownBecause = "Cloud.", Trims = new(RollTrim.Neutral, YawTrim.NotFitted, FlownAutopilot.Off) },
        var fact => fact,
    };

    [Theory, MemberData(nameof(Signed))]
    public void Nothing_is_stored_that_the_text_did_not_say(string kind)
    {
        var (ledger, who) = Ready(kind);
        var shown = Full(kind);
        var hash = SignedText.Sha256(Squawk.TextToSign(ledger, shown, School.Facts(who)));
        Facts Signing(Facts facts) => facts with { Affirmation = new("password", School.Noon, hash, hash) };
        var stored = EntryCodec.Write(Assert.IsType<Decision.Accepted>(School.Try(ledger, who, shown, Signing)).Entry);

        var altered = Altered(kind, shown).ToList();
        Assert.NotEmpty(altered);
        Assert.All(altered, other =>
        {
            // The program's own values may be sent as anything: what is stored is what was shown.
            if (School.Try(ledger, who, other.Fact, Signing) is Decision.Accepted { Entry: var entry })
                Assert.True(stored == EntryCodec.Write(entry), $"{other.Path} was changed under the signature.");
        });
    }

    /// <summary>No hash stands for a reading: each of its values is a word of the text.</summary>
    [Fact]
    public void Every_value_of_every_reading_stands_in_the_check_pilots_text()
    {
        string Text(string points) => Squawk.TextToSign(School.Approved, School.Flight with { TestPoints = points }, School.Facts(School.Pilot));
        var whole = JsonNode.Parse(Points)!;
        var said = Text(Points);

        Assert.DoesNotContain("sha", said, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("Readings: Wheel let go, feet keeping the ball centred, 95\u202Fkt, 3000\u202Fft, power 65\u202F%, flaps up, 9\u202F°C outside, smooth air, wheel last turned left, repeat 1, "
            + "seats left 77\u202Fkg, right 77\u202Fkg, fuel left 25\u202FL, right 30.5\u202FL: 6° left wing down after 10\u202Fs (stopwatch and horizon, ±1.5); 14\u202Fs to 10° right wing down (by eye); "
            + "rolls 0.4\u202F°/s right wing down (instrument).\n", said, StringComparison.Ordinal);
        Assert.All(Leaves(whole), path =>
        {
            var copy = whole.DeepClone();
            var leaf = path.Aggregate(copy, (node, step) => step is int index ? node[index]! : node[(string)step]!);
            leaf.ReplaceWith(leaf.GetValueKind() == System.Text.Json.JsonValueKind.Number ? JsonValue.Create(leaf.GetValue<double>() + 0.01) : JsonValue.Create("other"));
            Assert.True(said != Text(copy.ToJsonString()), $"{string.Join('.', path)} is changed and the text is not.");
        });
    }

    [Theory, MemberData(nameof(Signed))]
    public void The_stored_text_is_the_text_that_was_shown_and_names_nobody(string kind)
    {
        var (ledger, who) = Ready(kind);
        var entry = Assert.IsType<Decision.Accepted>(School.Try(ledger, who, Full(kind))).Entry;

        Assert.Equal(Squawk.TextToSign(ledger, Full(kind), School.Facts(who)), entry.Signature!.Text);
        Assert.Contains(SignedText.Token(who.Id), entry.Signature.Text, StringComparison.Ordinal);
        Assert.Contains(SignedText.Token(who.Certificates[0].Id), entry.Signature.Text, StringComparison.Ordinal);
        Assert.Equal((who.Certificates[0].Id, who.Certificates[0].Kind), (entry.Signature.Certificate!.Value, entry.Signature.CertificateKind));
    }

    [Fact]
    public void What_is_entered_late_says_when_it_happened_above_its_signature()
    {
        var grounded = School.Empty.Do(School.Pilot, School.Report with { RedFlags = [RedFlag.Bang] });
        var clear = School.Checks.Single(check => check.Check == Check.DamageInspection) with { HappenedAt = School.Noon };

        Assert.Contains("\nA late entry: it happened 2026-03-02 12:00 UTC.\n", Squawk.TextToSign(grounded, clear, School.Facts(School.Inspector)), StringComparison.Ordinal);
    }

    [Fact]
    public void An_expired_certificate_is_not_quoted_under_a_signature()
    {
        var mechanic = School.Mechanic with
        {
            Certificates = [School.Mechanic.Certificates[0] with { ValidUntil = School.Today.PlusDays(-1) }, new(new(Guid.Parse("00000000-0000-7000-9000-0000000000cc")), "mechanic-powerplant", School.Today)],
        };
        var signature = Assert.IsType<Decision.Accepted>(School.Try(School.Torqued, mechanic, School.Done)).Entry.Signature!;

        Assert.Equal(("mechanic-powerplant", mechanic.Certificates[1].Id), (signature.CertificateKind, signature.Certificate!.Value));
        Assert.DoesNotContain(SignedText.Token(mechanic.Certificates[0].Id), signature.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Tokens_become_what_the_register_says_today_and_nothing_else_changes()
    {
        var text = $"By {SignedText.Token(School.Pilot.Id)}, {SignedText.Token(School.Pilot.Certificates[0].Id)}; [person:nobody] [note:1].";

        Assert.Equal("By A. Pilot, 1234; [person:nobody] [note:1].", SignedText.Render(text, _ => "A. Pilot", _ => "1234"));
        Assert.Equal("By (erased), 1234; [person:nobody] [note:1].", SignedText.Render(text, _ => "(erased)", _ => "1234"));
    }
}
