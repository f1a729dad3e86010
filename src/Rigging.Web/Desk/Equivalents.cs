using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Rules;
using UnitsNet;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Desk;

/// <summary>A roll tendency in the coins that people carry: litres in a tank, a person in a seat, flats on a head. All at the reference.</summary>
public sealed class Equivalents(Aeroplane aeroplane)
{
    public const double PersonKg = Rigging.Mechanics.Contract.Load.UsualPersonKg;

    readonly PilotsCurrency currency = new(aeroplane.Reference);

    Airframe Airframe => aeroplane.Airframe;

    /// <summary>What one of each coin is worth, as sentences.</summary>
    public IReadOnlyList<string> Unit()
    {
        List<string> lines = [];
        if (currency.DegPerSPerLitre != 0)
            lines.Add($"Ten litres more on the right than on the left: {RollRate(10 * currency.DegPerSPerLitre)}.");
        lines.AddRange(Airframe.Seats.Where(seat => seat.ArmM != 0).Select(seat => $"Ten kilograms more in the {seat.Name} seat: {RollRate(10 * currency.DegPerSPerKgIn(seat))}."));
        lines.Add($"A tenth of a degree more incidence on the right panel than on the left: {RollRate(0.1 * currency.DegPerSPerPanelDeg)}.");
        if (Eccentric.On(Airframe).Value is { } eccentric)
            lines.Add($"Half a flat of the right eccentric from neutral, trailing edge down: {RollRate(currency.DegPerSPerFlat(eccentric, Angle.Zero) / 2)}.");
        return lines;
    }

    /// <summary>A tendency in the pilot's currency: what would take it out, and what it is at the loads a school flies with.</summary>
    public IReadOnlyList<string> Says(double degPerS) =>
    [
        .. Of(degPerS) is { } coins ? [coins] : Array.Empty<string>(),
        $"What the next pilot will feel: {string.Join("; ", AtCommonLoads(degPerS).Select(load => $"{load.Name}, {load.Feels}"))}.",
    ];

    /// <summary>What would take a tendency out, as one sentence; null where it is nothing to speak of.</summary>
    public string? Of(double degPerS)
    {
        if (Math.Abs(degPerS) < 0.05) return null;
        List<string> coins = [];
        if (currency.LitresThatNull(degPerS) is { } litres)
            coins.Add($"{Litres(Math.Abs(litres))} more in the {(litres > 0 ? "right" : "left")} tank than in the other");
        // The seat farthest out on the light side: more in it is easier to think of than less in the other.
        if (Airframe.Seats.MaxBy(seat => -Math.Sign(degPerS) * seat.ArmM) is { ArmM: not 0 } seat && currency.PersonsThatNull(degPerS, seat, PersonKg) is { } persons and > 0)
            coins.Add($"{Words.Number(persons * PersonKg, 0)}{Space}kg more in the {seat.Name} seat ({Words.Number(persons * 100, 0)}{Space}% of a person)");
        if (Eccentric.On(Airframe).Value is { } eccentric && currency.DegPerSPerFlat(eccentric, Angle.Zero) is var perFlat && perFlat != 0 && Math.Abs(degPerS / perFlat) >= 0.125)
            coins.Add($"about {FlatsInWords.Of(Math.Round(4 * Math.Abs(degPerS / perFlat)) / 4)} turned at one wing");
        return coins.Count == 0 ? null : $"It would stay level with {string.Join(", or ", coins)}.";
    }

    /// <summary>What a rolling moment coefficient amounts to, °/s, right wing down positive.</summary>
    public double OfMoment(double rolling) => aeroplane.Reference.RollTendencyDegPerS(rolling * aeroplane.Reference.LiftDifference);

    /// <summary>What the next pilot feels at the loads a school flies with.</summary>
    public IReadOnlyList<LoadLine> AtCommonLoads(double riggedForDegPerS) =>
        [.. currency.At(PilotsCurrency.CommonLoads(Airframe, PersonKg), riggedForDegPerS).Select(load => new LoadLine(load.Name, RollRate(load.DegPerS)))];
}

/// <param name="Name">Who is aboard: "solo left".</param>
/// <param name="Feels">The roll tendency in words.</param>
public sealed record LoadLine(string Name, string Feels);
