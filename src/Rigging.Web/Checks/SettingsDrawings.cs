using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Squawks.Entries;
using Rigging.Squawks.Rules;
using Rigging.Web.Drawings;
using Rigging.Web.Look;
using Check = Rigging.Squawks.Entries.Check;
using BushingAngles = Rigging.Squawks.Entries.BushingAngles;
using Side = Rigging.Mechanics.Contract.Side;

namespace Rigging.Web.Checks;

/// <summary>The eccentrics and the tabs as they stand, drawn. A wing whose bushings are not both on record, or disagree, has no one place to draw.</summary>
static class SettingsDrawings
{
    /// <summary>What was measured, where it is a thing to be seen: the ball, a bent tab. Null for the rest.</summary>
    public static Drawing? Of(Check check, double value) => check switch
    {
        Check.BallOffset => BallView.Draw(value),
        Check.AileronTab => TabView.OfAileron(value, value),
        Check.RudderTab => TabView.OfRudder(value, value),
        _ => null,
    };

    /// <summary>A bent tab; null for what is counted in turns.</summary>
    public static Drawing? Of(AdjusterSetting setting) => setting.Control switch
    {
        Control.AileronTab => TabView.OfAileron(setting.Value, setting.Value),
        Control.RudderTab => TabView.OfRudder(setting.Value, setting.Value),
        _ => null,
    };

    public static IEnumerable<Drawing> Of(AirframeOnFile? onFile, BushingAngles? settings)
    {
        if (settings is null || onFile?.Read().Eccentric is not { } eccentric) yield break;
        foreach (var (wing, control, offset) in (IEnumerable<(Side, Control, Spanwise?)>)
            [(Side.Left, Control.LeftEccentric, eccentric.NeutralOffset?.Left), (Side.Right, Control.RightEccentric, eccentric.NeutralOffset?.Right)])
        {
            if (settings.Of(control) is not ({ } front, { } rear) || FoundSetting.From(wing, new(front, rear)).Value is not { Angle.Degrees: var at }) continue;
            yield return EccentricView.Draw(new(wing, at, at, eccentric.MaxAngleDeg, eccentric.HeadFlats, eccentric.BushingIn, offset), Face.Rear)
                with
            { Title = Gaps.Fill(Say.Eccentric, wing == Side.Left ? Texts.Left : Texts.Right, Directions.TrailingEdge(at)) };
        }
    }
}
