using Rigging.Squawks.Entries;
using Rigging.Web.Look;

namespace Rigging.Web.Checks;

/// <summary>What kind of answer a check wants.</summary>
enum Wanted
{
    /// <summary>Litres in each tank, and in words how they were measured and who sat where.</summary>
    Fuel,

    /// <summary>Clear or not.</summary>
    Look,

    /// <summary>A size and the side it goes to.</summary>
    Sided,

    /// <summary>A force.</summary>
    Force,

    /// <summary>How far a surface goes each way.</summary>
    Travel,
}

/// <summary>How one check is asked for: its own questions and no others.</summary>
/// <param name="HowTo">What is done, in a sentence or two.</param>
/// <param name="Minus">The side that counts negative, in words.</param>
/// <param name="Plus">The side that counts positive.</param>
/// <param name="Usual">Standard deviation taken when none is given, in words; null where the mechanics do not use the reading.</param>
sealed record CheckSheet(Check Check, string Title, string HowTo, Wanted Wanted, string Minus = "", string None = "", string Plus = "", string? Usual = null)
{
    public static IReadOnlyList<CheckSheet> All =>
    [
        new(Check.FuelAndSeats, Say.FuelAndSeats,
            Say.MeasureFuelInEachTank, Wanted.Fuel),
        new(Check.BallOffset, Texts.Ball,
            Say.LevelAircraftCrosswiseAtPoints,
            Wanted.Sided, Say.BallLiesLeft, Say.Centred, Say.BallLiesRight, Say.N01Width),
        new(Check.DamageInspection, Say.Damage,
            Say.AttachFittingsStrutsSpars, Wanted.Look),
        new(Check.FlapDifference, Say.Flaps,
            Say.BothFlapsAtTheirUp, Wanted.Sided, Say.LeftFlapHangsLower, Say.BothAlike, Say.RightFlapHangsLower, "0.2°"),
        new(Check.AileronNeutralOffset, Say.AileronsAtNeutral,
            Say.WheelOrStickHeldAtItsRigged,
            Wanted.Sided, Say.LeftAileronUpRight, Say.InLine, Say.RightAileronUpLeft, "0.2°"),
        new(Check.CableTension, Say.Cables, Say.TensionOfEachCableWithTensiometer, Wanted.Force),
        new(Check.RudderTab, Say.RudderAndItsTab, Say.RudderHeldInLineWithFin,
            Wanted.Sided, Say.TabBentToRight, Say.InLine, Say.TabBentToLeft),
        new(Check.ControlTravel, Say.ControlTravel, Say.ControlTravelHowTo, Wanted.Travel),
        new(Check.AileronFloat, Say.AileronFloat, Say.ControlsFreeAsInFlightHands,
            Wanted.Sided, Say.LeftAileronUpRight, Say.InLine, Say.RightAileronUpLeft, "0.2°"),
        new(Check.AileronTab, Say.AileronTab, Say.HowFarFixedTab, Wanted.Sided, Say.BentUp, Say.InLine, Say.BentDown),
        new(Check.ControlFriction, Say.ControlFriction, Say.ForceAtWheelRimOrAtGrip, Wanted.Force),
        new(Check.ContourSurvey, Say.ContourSurvey, Say.SkinsLeadingEdgesTips, Wanted.Look),
        new(Check.PanelIncidenceDifference, Say.PanelIncidence, Say.AngleOfEachWingPanel,
            Wanted.Sided, Say.LeftPanelHasMoreIncidence, Say.BothAlike, Say.RightPanelHasMoreIncidence, "0.1°"),
        new(Check.TipIncidenceDifference, Say.TipIncidence, Say.SameAtTipStationMore,
            Wanted.Sided, Say.LeftTipHasMoreIncidence, Say.BothAlike, Say.RightTipHasMoreIncidence, "0.1°"),
    ];

    public static CheckSheet Of(Check check) => All.Single(sheet => sheet.Check == check);

    /// <summary>As it stands in an address and in a draft's key.</summary>
    public string Word => Mechanics.Contract.Wire.Word(Check);

    public static CheckSheet? Find(string? word) => All.FirstOrDefault(sheet => sheet.Word == word);

    public bool IsPrerequisite => CheckUnits.Serves(Check) is not null;

    public bool MayNotApply => Check is not Check.DamageInspection;

    /// <summary>The unit of a sided value, for people.</summary>
    public string Unit => Check == Check.BallOffset ? Say.BallWidths : Say.Degrees;

}
