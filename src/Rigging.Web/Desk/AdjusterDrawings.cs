using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Drawings;
using UnitsNet;
using BushingAngles = Rigging.Squawks.Entries.BushingAngles;
using Side = Rigging.Mechanics.Contract.Side;

namespace Rigging.Web.Desk;

/// <summary>How an eccentric or a tab stands and is moved, from a ledger's angles and the airframe's data on file.</summary>
public static class AdjusterDrawings
{
    public static Side WingOf(Control eccentric) => eccentric == Control.LeftEccentric ? Side.Left : Side.Right;

    /// <summary>The turn between two settings of one wing, in the mechanic's terms; null without data on file, without a turn, or past a stop.</summary>
    public static EccentricMove? Move(Airframe airframe, Control eccentric, double? fromDeg, double? toDeg) =>
        fromDeg is { } from && toDeg is { } to && Eccentric.On(airframe).Value is { } onFile
            ? EccentricMove.Plan(onFile, WingOf(eccentric), Angle.FromDegrees(from), Angle.FromDegrees(to)).Value
            : null;

    /// <summary>Null where an angle or the eccentric's data are not on record, and for what is not set by an angle.</summary>
    public static Drawing? Draw(Airframe airframe, Control control, double? fromDeg, double? toDeg, Face face = Face.Rear) => (fromDeg, toDeg) is not ({ } from, { } to) ? null : control switch
    {
        Control.LeftEccentric or Control.RightEccentric => Draw(airframe, control, from, to, face),
        Control.AileronTab => TabView.OfAileron(from, to),
        Control.RudderTab => TabView.OfRudder(from, to),
        Control.LeftStrutFork or Control.RightStrutFork => ForkView.Draw(
            control, from, to, AdjusterWords.HowFar(control, from, to), RearSparDownMm(airframe, control, from, to) is { } mm ? Math.Abs(mm) : null),
        _ => null,
    };

    /// <summary>How far a move of a wing takes its rear spar down, where it is fastest: at the root with an eccentric, at the strut with a fork; null when not on file.</summary>
    public static double? RearSparDownMm(Airframe airframe, Control control, double from, double to) =>
        EdgeMove.Of(control.OnFile(), from, to, airframe) is { RearSparAft: { } aft } edge ? edge.At(aft)?.Millimeters : null;

    static Drawing? Draw(Airframe airframe, Control eccentric, double from, double to, Face face)
    {
        if (airframe.Eccentric is not { } onFile) return null;
        var wing = WingOf(eccentric);
        var offset = wing == Side.Left ? onFile.NeutralOffset?.Left : onFile.NeutralOffset?.Right;
        return EccentricView.Draw(new(wing, from, to, onFile.MaxAngleDeg, onFile.HeadFlats, onFile.BushingIn, offset), face);
    }

    /// <summary>Every eccentric that is not left as it was found.</summary>
    public static IEnumerable<Drawing> Draw(Airframe airframe, BushingAngles found, BushingAngles left) =>
        ((Control[])[Control.LeftEccentric, Control.RightEccentric])
            .Where(eccentric => found.Of(eccentric) != left.Of(eccentric))
            .Select(eccentric => Draw(airframe, eccentric, found.Of(eccentric).Front, left.Of(eccentric).Front))
            .OfType<Drawing>();

    /// <summary>A setting in words: "15° trailing edge up", "neutral", "not recorded".</summary>
    public static string Setting(double? deg) => deg is { } angle ? Directions.TrailingEdge(angle) : Say.NotRecorded;
}
