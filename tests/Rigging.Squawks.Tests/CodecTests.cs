using System.Text;
using System.Text.Json;
using NodaTime;
using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Squawks.Rules;

namespace Rigging.Squawks.Tests;

/// <summary>The edges of what is stored: numbers, times, words.</summary>
public class CodecTests
{
    static Entry Of(Fact fact) => new(1, School.Noon, School.Pilot.Id, Authority.Pilot, fact);

    static T Again<T>(T fact) where T : Fact => (T)EntryCodec.Read(1, EntryCodec.KindOf(fact), EntryCodec.VersionOf(fact), EntryCodec.Write(Of(fact))).Fact;

    static string With(string from, string to)
    {
        var payload = EntryCodec.Write(Of(new Noted("Meant 95 kt.", 1)));
        Assert.Contains(from, payload, StringComparison.Ordinal);
        return payload.Replace(from, to, StringComparison.Ordinal);
    }

    [Fact]
    public void A_prepared_text_with_a_hole_in_a_list_is_not_read() =>
        Assert.Throws<System.Text.Json.JsonException>(() => EntryCodec.ReadFact("work-done", EntryCodec.WriteFact(School.Done).Replace("\"parts\":[", "\"parts\":[null,", StringComparison.Ordinal)));

    [Fact]
    public void Minus_zero_is_stored_as_zero()
    {
        var payload = EntryCodec.Write(Of(School.Measured(Check.BallOffset, -0.0)));
        Assert.Contains("\"value\":0}", payload, StringComparison.Ordinal);
        Assert.DoesNotContain("-0", payload.Split("\"fact\"")[1], StringComparison.Ordinal);
    }

    [Theory, InlineData(double.NaN), InlineData(double.PositiveInfinity), InlineData(double.NegativeInfinity)]
    public void What_is_no_number_is_neither_decided_nor_written(double value)
    {
        Assert.Throws<JsonException>(() => EntryCodec.Write(Of(School.Measured(Check.BallOffset, value))));
        var refused = Assert.IsType<Decision.Refused>(School.Try(School.Called, School.Mechanic, School.Measured(Check.BallOffset, value)));
        Assert.Equal([("value-out-of-range", "value")], refused.Broken.Select(b => (b.Code, b.Field)));
    }

    [Theory, InlineData(0.1), InlineData(1e-300), InlineData(1234567890.123456), InlineData(-15), InlineData(double.MaxValue), InlineData(double.Epsilon)]
    public void A_number_comes_back_as_the_same_number(double value) =>
        Assert.Equal(BitConverter.DoubleToInt64Bits(value), BitConverter.DoubleToInt64Bits(Again(School.Measured(Check.BallOffset, value)).Value!.Value));

    [Fact]
    public void A_property_nobody_knows_is_refused() => Assert.Throws<JsonException>(() =>
        EntryCodec.Read(1, "note", 1, With("\"corrects\"", "\"colour\":\"red\",\"corrects\"")));

    [Fact]
    public void A_property_nobody_knows_around_the_fact_is_refused() => Assert.Throws<JsonException>(() =>
        EntryCodec.Read(1, "note", 1, With("\"fact\"", "\"mood\":1,\"fact\"")));

    [Fact]
    public void A_property_that_cannot_be_null_may_not_be_missing() => Assert.Throws<JsonException>(() =>
        EntryCodec.Read(1, "no-fault-found", 1, EntryCodec.Write(Of(new NoFaultFound("Nothing.", true))).Replace(",\"everythingRefitted\":true", "", StringComparison.Ordinal)));

    [Theory, InlineData("\"Meant 95 kt.\"", "null"), InlineData("\"Meant 95 kt.\"", "17"), InlineData("\"corrects\":1", "\"corrects\":\"1\""), InlineData("\"as\":\"pilot\"", "\"as\":0"),
        InlineData("\"as\":\"pilot\"", "\"as\":\"captain\""), InlineData("2026-03-02T12:00:00Z", "yesterday"), InlineData("}}", "}")]
    public void A_value_of_the_wrong_sort_is_refused(string from, string to) => Assert.ThrowsAny<Exception>(() => EntryCodec.Read(1, "note", 1, With(from, to)));

    [Fact]
    public void A_moment_is_cut_to_whole_milliseconds_before_anything_is_decided()
    {
        var fine = School.Noon.Plus(Duration.FromNanoseconds(1_999_999));
        var decision = School.Try(School.Judged, School.Inspector, new Closed("Explained."), facts => facts with { Now = fine });

        var entry = Assert.IsType<Decision.Accepted>(decision).Entry;
        Assert.Equal(School.Noon.Plus(Duration.FromMilliseconds(1)), entry.At);
        Assert.Equal(School.Noon.Plus(Duration.FromMilliseconds(1)), entry.Signature!.AuthenticatedAt);
        Assert.Equal(entry.At, EntryCodec.Read(1, "closing", 1, EntryCodec.Write(entry)).At);
    }

    [Theory, InlineData("Ça tire à gauche, «aile lourde»."), InlineData("左に傾く"), InlineData("🛩️ rolls ↶ ½ ball − 5°"), InlineData("He said \"left\" \\ <b>not</b> & 'right'\r\n\ttwo lines"),
        InlineData("e\u0301 is not é"), InlineData("שמאל"), InlineData("left\u2028wing\u00a0heavy")]
    public void A_pilot_s_words_are_kept_as_they_are(string words)
    {
        Assert.IsType<Decision.Accepted>(School.Try(School.Empty, School.Pilot, School.Report with { Words = words }));
        Assert.Equal(words, Again(School.Report with { Words = words }).Words);
        Assert.Equal(words, Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(Again(new Noted(words, null)).Text)));
    }

    [Theory, InlineData("bell \a"), InlineData("nothing \0 here"), InlineData("half a letter \ud83d"), InlineData("escape \u001b[31m")]
    public void A_character_that_no_paper_prints_is_refused(string words)
    {
        var refused = Assert.IsType<Decision.Refused>(School.Try(School.Empty, School.Pilot, School.Report with { Words = words }));
        Assert.Equal([("text-unreadable", "words")], refused.Broken.Select(b => (b.Code, b.Field)));
    }

    [Fact]
    public void Four_thousand_characters_are_taken_and_one_more_is_not()
    {
        var longest = new string('ä', 4000);
        Assert.Equal(longest, Again(School.Report with { Words = longest }).Words);
        Assert.IsType<Decision.Accepted>(School.Try(School.Empty, School.Pilot, School.Report with { Words = longest }));

        foreach (var tooLong in (Fact[])[School.Report with { Words = longest + "!" }, School.Report with { SinceWhen = longest + "!" }])
        {
            var refused = Assert.IsType<Decision.Refused>(School.Try(School.Empty, School.Pilot, tooLong));
            Assert.Equal(["text-too-long"], refused.Broken.Select(b => b.Code));
            Assert.Contains("4001", refused.Broken[0].Sentence, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_text_deep_inside_an_entry_is_held_to_the_same_rule()
    {
        var done = School.Done with { Parts = [new(new string('x', 4001), "1", 1)] };
        var refused = Assert.IsType<Decision.Refused>(School.Try(School.Torqued, School.Mechanic, done));
        Assert.Equal([("text-too-long", "parts")], refused.Broken.Select(b => (b.Code, b.Field)));
    }

    [Fact]
    public void A_list_longer_than_any_work_is_refused()
    {
        var done = School.Done with { Disturbed = [.. Enumerable.Repeat("bolt", 201)] };
        var refused = Assert.IsType<Decision.Refused>(School.Try(School.Torqued, School.Mechanic, done));
        Assert.Equal([("list-too-long", "disturbed")], refused.Broken.Select(b => (b.Code, b.Field)));
    }

    [Fact]
    public void A_choice_that_is_none_is_refused()
    {
        var refused = Assert.IsType<Decision.Refused>(School.Try(School.Empty, School.Pilot, School.Report with { RollsTo = (Side)9 }));
        Assert.Equal([("value-out-of-range", "rollsTo")], refused.Broken.Select(b => (b.Code, b.Field)));
    }

    [Fact]
    public void A_draft_reads_back_by_the_same_rules()
    {
        Assert.Equal(School.HalfAFlat.Data, ((CorrectionAgreed)EntryCodec.ReadFact("correction", EntryCodec.WriteFact(School.HalfAFlat))).Data);
        Assert.Throws<JsonException>(() => EntryCodec.ReadFact("closing", """{"statement":"Fine.","colour":"red"}"""));
        Assert.Throws<JsonException>(() => EntryCodec.ReadFact("closing", "{}"));
    }
}
