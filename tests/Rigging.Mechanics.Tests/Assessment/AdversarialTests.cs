using System.Text.Json.Nodes;
using CsCheck;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Tests.Contract;

namespace Rigging.Mechanics.Tests.Assessment;

/// <summary>Requests that nobody in his senses would send: an answer in finite numbers, or faults that are named; never an exception.</summary>
public class AdversarialTests
{
    static readonly string[] Manoeuvres = ["release-all", "release-wheel", "hold-neutral", "hold-level", "hold-straight", "balance-fuel"];

    /// <summary>Each kind of reading at both ends of what is read at all, at its smallest, and as certain or as uncertain as may be said.</summary>
    static readonly string[] Extremes =
    [
        """{"kind":"bank-after","seconds":0.1,"deg":180}""", """{"kind":"bank-after","seconds":600,"deg":-180,"sd":0.0001}""", """{"kind":"bank-after","seconds":600,"deg":0,"sd":0.0001}""",
        """{"kind":"time-to-bank","deg":180,"seconds":0.1}""", """{"kind":"time-to-bank","deg":-1e-9,"seconds":600,"sd":1000}""",
        """{"kind":"roll-rate","degPerS":90,"sd":0.0001}""", """{"kind":"roll-rate","degPerS":-90}""", """{"kind":"roll-rate","degPerS":1e-300}""",
        """{"kind":"heading-rate","degPerS":45}""", """{"kind":"heading-rate","degPerS":-45,"sd":0.0001}""", """{"kind":"heading-change","seconds":600,"deg":720,"sd":0.0001}""",
        """{"kind":"ball","widths":3,"sd":0.0001}""", """{"kind":"ball","widths":-3}""", """{"kind":"wheel-angle","deg":180}""", """{"kind":"wheel-angle","deg":-180,"sd":0.0001}""",
        """{"kind":"wheel-force","n":1000}""", """{"kind":"wheel-force","n":-1000,"sd":0.0001}""", """{"kind":"fuel-difference","l":2000}""", """{"kind":"fuel-difference","l":-2000,"sd":0.0001}""",
        """{"kind":"rolls","side":"left","strength":"briskly"}""", """{"kind":"rolls","side":"right","strength":"briskly"}""", """{"kind":"rolls","side":"none"}""", """{"kind":"rolls","side":"right","strength":"barely"}""",
    ];

    static readonly string[] Checks =
    [
        """{"kind":"panel-incidence-difference","deg":45,"sdDeg":0.0001}""", """{"kind":"panel-incidence-difference","deg":-45}""", """{"kind":"tip-incidence-difference","deg":45}""",
        """{"kind":"flap-difference","deg":-45,"sdDeg":0.0001}""", """{"kind":"flap-difference","deg":45,"sdDeg":1000}""", """{"kind":"aileron-float","deg":45}""", """{"kind":"aileron-neutral-offset","deg":-45,"sdDeg":0.0001}""",
        """{"kind":"rudder-tab","deg":45}""", """{"kind":"aileron-tab","side":"left","deg":-45}""", """{"kind":"ball-offset","widths":3,"sd":0.0001}""", """{"kind":"control-friction","n":5000}""",
        """{"kind":"damage-inspection","clear":true}""", """{"kind":"damage-inspection","clear":false}""", """{"kind":"contour-survey","clear":true}""", """{"kind":"contour-survey","clear":false}""",
    ];

    static readonly string[] Events = [.. Wire.Words<EventKind>().Where(word => word != "correction-without-effect"), .. Wire.Words<Cause>().Select(cause => $"correction-without-effect:{cause}")];

    static Gen<string[]> Some(string[] from, int least, int most) => Gen.Int[0, from.Length - 1].Select(i => from[i]).Array[least, most];

    static readonly Gen<string> Point = Gen.Select(
        Some(Manoeuvres, 1, 1), Some(["20", "61", "95", "140", "400"], 1, 1), Some(["-2000", "3000", "30000"], 1, 1), Some(["0", "65", "100"], 1, 1), Some(["0", "10", "40"], 1, 1),
        Some(["smooth", "light", "moderate"], 1, 1), Some(Extremes, 1, 4),
        (manoeuvre, casKt, feet, power, flap, air, readings) => $$"""
            {"manoeuvre":"{{manoeuvre[0]}}","casKt":{{casKt[0]}},"pressureAltitudeFt":{{feet[0]}},"powerPercent":{{power[0]}},"flapDeg":{{flap[0]}},"air":"{{air[0]}}",
             "load":{"seatsKg":{"left":80,"right":0},"fuelL":{"left":0,"right":42} },"readings":[{{string.Join(',', readings)}}]}
            """);

    static readonly Gen<string> Request = Gen.Select(Point.Array[0, 5], Some(Checks, 0, 5), Some(Events, 0, 4), Gen.Int[-180, 180], Gen.Int[-180, 180],
        (points, checks, events, left, right) => Form(points, checks, events, left, right));

    static string Form(string[] points, string[] checks, string[] events, int left, int right) => $$"""
        {"airframeId":"st2","settings":{"leftEccentricDeg":{{left}},"rightEccentricDeg":{{right}}},"events":[{{string.Join(',', events.Select(word => $"\"{word}\""))}}],
         "testPoints":[{{string.Join(',', points)}}],"groundChecks":[{{string.Join(',', checks)}}]}
        """;

    [Fact]
    public void Extreme_and_contradictory_requests_are_answered_in_finite_numbers() => Request.Sample(json => { Answered(json); }, iter: 60);

    [Fact]
    public void All_that_can_be_said_at_once_contradicting_itself_is_answered() =>
        Answered(Form([.. Manoeuvres.Select(manoeuvre => $$"""{"manoeuvre":"{{manoeuvre}}","casKt":95,"pressureAltitudeFt":3000,"load":{"seatsKg":{ },"fuelL":{ } },"readings":[{{string.Join(',', Extremes)}}]}""")], Checks, Events, 90, -90));

    [Fact]
    public void Two_hundred_readings_are_answered()
    {
        var point = $$"""{"manoeuvre":"release-all","casKt":95,"pressureAltitudeFt":3000,"load":{"seatsKg":{ },"fuelL":{ } },"readings":[{"kind":"bank-after","seconds":10,"deg":-8},{"kind":"rolls","side":"left","strength":"slowly"},{"kind":"ball","widths":0.1},{"kind":"heading-change","seconds":8,"deg":-5}]}""";

        var answer = Answered(Form([.. Enumerable.Repeat(point, 50)], [], [], 0, 0));

        Assert.True(answer!["rollTendency"]!["mean"]!.GetValue<double>() < 0);
    }

    [Fact]
    public void Whatever_is_left_out_there_is_an_answer_or_the_faults_are_named()
    {
        var whole = JsonNode.Parse(Examples.Request)!.AsObject();
        foreach (var field in whole.Select(field => field.Key).ToArray())
            Answered(Examples.Edited(Examples.Request, field, null));
    }

    /// <summary>The answer; null where the request was refused with its faults named.</summary>
    static JsonNode? Answered(string json)
    {
        var read = ContractReader.ReadRequest(json);
        if (!read.Ok)
        {
            Assert.NotEmpty(read.Faults);
            return null;
        }
        var written = ContractWriter.Write(Assessor.Assess(read.Value, read.Value.Airframe ?? Trainer.Airframe));
        var answer = JsonNode.Parse(written)!;
        Assert.DoesNotContain("NaN", written, StringComparison.Ordinal);
        Assert.DoesNotContain("Infinity", written, StringComparison.Ordinal);
        Assert.DoesNotContain("∞", written, StringComparison.Ordinal);
        Assert.All(answer["causes"]!.AsArray(), cause => Assert.True(cause!["probability"] is null || cause["probability"]!.GetValue<double>() is > 0 and < 1));
        Assert.True(answer["correction"] is null || answer["refusals"]!.AsArray().Count == 0);
        Assert.Contains(answer["cautions"]!.AsArray(), caution => caution!.GetValue<string>().Contains("the eccentric:", StringComparison.Ordinal));
        return answer;
    }
}
