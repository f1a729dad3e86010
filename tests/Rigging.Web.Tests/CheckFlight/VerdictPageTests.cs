using Rigging.Squawks.Rules;
using Rigging.Squawks.Tests;

namespace Rigging.Web.Tests.CheckFlight;

[Collection(InTheHangar.Name)]
public sealed class VerdictPageTests(Hangar hangar)
{
    /// <summary>Half a flat was expected to leave a slight left roll; what was flown is read against it.</summary>
    [Theory]
    [InlineData(0, "The flight agrees with it.")]
    [InlineData(-20, "The flight does not agree with it: find out why before more is moved.")]
    public async Task What_was_expected_stands_beside_what_was_flown(double bankDeg, string said)
    {
        var flown = School.Approved.Do(School.Pilot, School.Flight with
        {
            TestPoints = $"[{string.Join(", ", ((double[])[75, 95, 105]).Select(casKt => FormattableString.Invariant($$"""
                { "manoeuvre": "release-wheel", "casKt": {{casKt}}, "pressureAltitudeFt": 3000, "load": { "seatsKg": { "left": 77, "right": 77 }, "fuelL": { "left": 25, "right": 25 } },
                  "readings": [{ "kind": "bank-after", "seconds": 10, "deg": {{bankDeg}}, "method": "stopwatch-horizon" }] }
                """)))}]",
        });
        using var browser = await hangar.As(School.Mechanic);

        var page = await browser.Open($"/squawks/{await hangar.Squawk(flown)}/verdict");

        Assert.Contains($"Before the flight this was expected: {Directions.Expected(-0.1, -0.4, 0.2)}. {said}".Replace(Directions.Space, " ", StringComparison.Ordinal), page.Text, StringComparison.Ordinal);
    }
}
