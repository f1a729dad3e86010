using System.Globalization;
using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Web.Desk;
using Rigging.Web.Look;
using BushingAngles = Rigging.Squawks.Entries.BushingAngles;
using Side = Rigging.Mechanics.Contract.Side;

namespace Rigging.Web.Checks;

/// <summary>The marks of the four bushings as seen, in degrees or as the hand of a clock.</summary>
static class MarksForm
{
    public const string Word = "marks";

    public static (string Field, string Name, Side Wing)[] Bushings =>
    [
        ("leftFrontDeg", Say.LeftWingFrontBushing, Side.Left),
        ("leftRearDeg", Say.LeftWingRearBushing, Side.Left),
        ("rightFrontDeg", Say.RightWingFrontBushing, Side.Right),
        ("rightRearDeg", Say.RightWingRearBushing, Side.Right),
    ];

    /// <param name="clockKnown">Fitting and neutral offset are on file, so that a clock position means an angle.</param>
    public static IReadOnlyList<Choice> Ways(bool clockKnown) =>
    [
        new("down", Say.TrailingEdgeDown),
        new("up", Say.TrailingEdgeUp),
        new("rear", Say.OclockAtRearFace, Disabled: !clockKnown),
        new("front", Say.OclockAtFrontFace, Disabled: !clockKnown),
    ];

    public static AsFound Read(TypedFields fields, Typed typed, Airframe? airframe)
    {
        double? At(int place) => AngleOf(fields, typed, airframe?.Eccentric, Bushings[place]);
        return new(new BushingAngles(At(0), At(1), At(2), At(3)), fields.Text("other"), Adjusters: AdjusterForm.Read(fields, typed, "", AdjusterForm.Counted(airframe)));
    }

    static double? AngleOf(TypedFields fields, Typed typed, EccentricOnFile? eccentric, (string Field, string Name, Side Wing) bushing)
    {
        var (field, name, wing) = bushing;
        if (fields.Text(field) is not { } text) return null;
        if (fields[field + "Way"] is "rear" or "front")
        {
            if (MarkOnTheHead.ReadClock(text) is not { } clock)
                typed.Wrong("not-a-clock", Gaps.Fill(Say.IsNoPlaceOnClockWanted, name, text), field);
            else if (eccentric is null || MarkOnTheHead.AngleDeg(clock, wing, fields[field + "Way"] == "rear" ? Face.Rear : Face.Front, eccentric) is not { } angle)
                typed.Wrong("clock-not-known", Gaps.Fill(Say.ClockPositionMeansNothing, name), field);
            else
                return Math.Round(angle, 1);
            return null;
        }
        if (typed.Number(text, field, name, "degrees") is not { } degrees) return null;
        if (degrees is < 0 or > 180)
            typed.Wrong("value-out-of-range", Gaps.Fill(Say.CannotBeWanted0To180, name, text), field);
        else if (degrees != 0 && fields[field + "Way"] is not ("down" or "up"))
            typed.Wrong("side-missing", Gaps.Fill(Say.GivenNotHowItCounts, name, degrees.ToString("0.##", CultureInfo.InvariantCulture)), field + "Way");
        else
            return fields[field + "Way"] == "up" && degrees != 0 ? -degrees : degrees;
        return null;
    }
}
