using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Assessment;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Loading;
using Rigging.Mechanics.Motion;
using Rigging.Squawks.Rules;
using Rigging.Web.Drawings;
using Rigging.Web.Look;
using UnitsNet;
using static Rigging.Squawks.Rules.Directions;

namespace Rigging.Web.Desk;

/// <summary>A roll tendency in the coins that people carry: litres in a tank, a person in a seat, flats on a head. All at one flight point.</summary>
/// <remarks>Of none is more said than there can be: more than the tanks hold, than a person in a seat, than the stops allow has no number.</remarks>
public sealed class Equivalents
{
    public const double PersonKg = Rigging.Mechanics.Contract.Load.UsualPersonKg;

    readonly Aeroplane aeroplane;
    readonly FlightPoint point;
    readonly PilotsCurrency currency;

    /// <summary>At the airframe's reference.</summary>
    public Equivalents(Aeroplane aeroplane) : this(aeroplane, aeroplane.Reference) { }

    Equivalents(Aeroplane aeroplane, FlightPoint point) => (this.aeroplane, this.point, currency) = (aeroplane, point, new(point));

    /// <summary>The same at another speed, knots: a litre counts more where it is slow, a flat where it is fast.</summary>
    public Equivalents At(double casKt) => new(aeroplane, aeroplane.AtSpeed(casKt));

    Airframe Airframe => aeroplane.Airframe;

    /// <summary>Of an aeroplane whose figures determine no flight nothing is said at all; its airframe page says why.</summary>
    bool IsMute => aeroplane.Refusals.Count > 0;

    /// <summary>What one of each coin is worth, as sentences.</summary>
    public IReadOnlyList<string> Unit()
    {
        if (IsMute) return [];
        List<string> lines = [];
        if (currency.DegPerSPerLitre != 0 && Airframe.TanksHoldL(Side.Right) >= 10)
            lines.Add(Gaps.Fill(Say.TenLitresMoreOnRight, RollRate(10 * currency.DegPerSPerLitre)));
        lines.AddRange(Airframe.Seats.Where(seat => seat.ArmM != 0).Select(seat => Gaps.Fill(Say.TenKilogramsMoreInSeat, seat.Name, RollRate(10 * currency.DegPerSPerKgIn(seat)))));
        lines.Add(Gaps.Fill(Say.TenthOfDegreeMoreIncidence, RollRate(0.1 * currency.DegPerSPerPanelDeg)));
        if (Eccentric.On(Airframe).Value is { } eccentric && eccentric.MaxAngle >= eccentric.PerFlat / 2)
            lines.Add(Gaps.Fill(Say.HalfFlatOfRightEccentric, RollRate(currency.DegPerSPerFlat(eccentric, Angle.Zero) / 2)));
        return lines;
    }

    /// <summary>A tendency in the pilot's currency: what would take it out where its side is known, and what it is at the loads a school flies with.</summary>
    public IReadOnlyList<string> Says(Estimate tendency) => IsMute ? [] :
    [
        .. Of(tendency) is { } coins ? [coins] : Array.Empty<string>(),
        Gaps.Fill(Say.WhatNextPilotWillFeel, string.Join("; ", AtCommonLoads(tendency).Select(load => $"{load.Name}, {load.Feels}"))),
    ];

    /// <summary>What would take a tendency out, as one sentence; null where its side is not known, or where it is nothing to speak of.</summary>
    public string? Of(Estimate tendency) => tendency.OfRoll().HasSide() ? Of(tendency.Mean) : null;

    /// <summary>What the next pilot feels at the loads a school flies with, as far as the tendency is known.</summary>
    public IReadOnlyList<LoadLine> AtCommonLoads(Estimate riggedFor)
    {
        if (IsMute) return [];
        IReadOnlyList<LoadTendency> At(double degPerS) => currency.At(PilotsCurrency.CommonLoads(Airframe, PersonKg), degPerS);
        return [.. At(riggedFor.Mean).Zip(At(riggedFor.Low), At(riggedFor.High)).Select(load => new LoadLine(load.First.Name, Short(load.First.DegPerS, load.Second.DegPerS, load.Third.DegPerS, RollRate)))];
    }

    /// <summary>What would take a roll of exactly that much out, as one sentence; null where it is nothing to speak of.</summary>
    public string? Of(double degPerS) => Balance(degPerS) is { } coins ? Gaps.Fill(Say.ItWouldStayLevelWith, coins) : null;

    /// <summary>What would balance that much roll: litres, or a person's weight, or flats; null where it is nothing to speak of.</summary>
    public string? Balance(double degPerS)
    {
        if (IsMute || !(Math.Abs(degPerS) >= AeroplaneView.LeastRate && double.IsFinite(degPerS))) return null;
        List<string> coins = [];
        if (currency.LitresThatNull(degPerS) is { } litres)
            coins.Add(MoreFuel(litres));
        // The seat farthest out on the light side: more in it is easier to think of than less in the other.
        if (Airframe.Seats.MaxBy(seat => -Math.Sign(degPerS) * seat.ArmM) is { ArmM: not 0 } seat && currency.PersonsThatNull(degPerS, seat, PersonKg) is { } persons and > 0)
            coins.Add(persons <= 1
                ? Gaps.Fill(Say.KgMoreInSeatOfPerson, Words.Number(persons * PersonKg, 0), seat.Name, Words.Number(persons * 100, 0))
                : Gaps.Fill(Say.MoreThanPersonInSeat, seat.Name));
        if (Flats(degPerS) is { } flats) coins.Add(Gaps.Fill(Say.TurnedAtOneWing, flats));
        return coins.Count == 0 ? null : string.Join(Say.Or, coins);
    }

    /// <param name="litres">Right minus left.</param>
    string MoreFuel(double litres)
    {
        var (most, side) = litres > 0
            ? (Airframe.TanksHoldL(Side.Right), Texts.RightInText)
            : (Airframe.TanksHoldL(Side.Left), Texts.LeftInText);
        // Whole litres are said: rounded they may not come to more than there is room for.
        return Math.Abs(litres) <= most
            ? Gaps.Fill(Say.MoreInTankThanInOther, Litres(Math.Min(Math.Abs(litres), Math.Floor(most))), side)
            : Gaps.Fill(Say.MoreFuelThanTanksHold, side);
    }

    /// <summary>
    /// The same in flats of one wing's eccentric from neutral, to the quarter; null without an eccentric on file, or where it is less than half of that.
    /// </summary>
    public string? Flats(double degPerS)
    {
        if (IsMute || Eccentric.On(Airframe).Value is not { } eccentric || currency.DegPerSPerPanelDeg == 0) return null;
        if (currency.FlatsThatNull(degPerS, eccentric) is not { } flats) return Say.MoreFlatsThanStopsAllow;
        // A quarter that the stop no longer allows is not said either.
        return Math.Min(Math.Round(4 * flats), Math.Floor(4 * (eccentric.MaxAngle / eccentric.PerFlat))) / 4 is var quarters and > 0
            ? Gaps.Fill(Say.AboutFlats, FlatsInWords.Of(quarters)) : null;
    }

    /// <summary>Fuel that nobody reported, as far as there are tanks for it, right minus left.</summary>
    public string UnreportedFuel(double litres)
    {
        if (Math.Abs(litres) > Airframe.TanksHoldL(Side.Left) + Airframe.TanksHoldL(Side.Right))
            return Gaps.Fill(Say.MoreFuelThanTanksHold, litres < 0 ? Texts.LeftInText : Texts.RightInText);
        return Math.Round(Math.Abs(litres), 2) == 0
            ? Say.AsReported
            : Gaps.Fill(litres < 0 ? Say.LMoreOnLeftThanReported : Say.LMoreOnRightThanReported, Words.Number(Math.Abs(litres)));
    }

    /// <summary>What a rolling moment coefficient amounts to, °/s, right wing down positive.</summary>
    public double OfMoment(double rolling) => point.RollTendencyDegPerS(rolling * point.LiftDifference);

    /// <summary>What the next pilot feels at the loads a school flies with.</summary>
    public IReadOnlyList<LoadLine> AtCommonLoads(double riggedForDegPerS) => IsMute ? [] :
        [.. currency.At(PilotsCurrency.CommonLoads(Airframe, PersonKg), riggedForDegPerS).Select(load => new LoadLine(load.Name, RollRate(load.DegPerS)))];
}

/// <param name="Name">Who is aboard: "solo left".</param>
/// <param name="Feels">The roll tendency in words.</param>
public sealed record LoadLine(string Name, string Feels);
