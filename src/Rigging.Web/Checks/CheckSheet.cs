using Rigging.Squawks.Entries;

namespace Rigging.Web.Checks;

/// <summary>What kind of answer a check wants.</summary>
enum Wanted
{
    /// <summary>How it was measured and what was found, in words.</summary>
    Words,

    /// <summary>Clear or not.</summary>
    Look,

    /// <summary>A size and the side it goes to.</summary>
    Sided,

    /// <summary>A force.</summary>
    Force,
}

/// <summary>How one check is asked for: its own questions and no others.</summary>
/// <param name="HowTo">What is done, in a sentence or two.</param>
/// <param name="Minus">The side that counts negative, in words.</param>
/// <param name="Plus">The side that counts positive.</param>
/// <param name="Usual">Standard deviation taken when none is given, in words; null where the mechanics do not use the reading.</param>
sealed record CheckSheet(Check Check, string Title, string HowTo, Wanted Wanted, string Minus = "", string None = "", string Plus = "", string? Usual = null)
{
    public static IReadOnlyList<CheckSheet> All { get; } =
    [
        new(Check.FuelAndSeats, "Fuel and seats",
            "Measure the fuel in each tank with the aircraft level, and write down who or what is in each seat. Loading is never cured by moving a wing.", Wanted.Words),
        new(Check.BallOffset, "Ball",
            "Level the aircraft crosswise at the points its manual names, then look where the ball lies. A ball half a width out rolls an aeroplane whose pilot follows it more than most heavy wings do.",
            Wanted.Sided, "ball lies left", "centred", "ball lies right", "0.1 width"),
        new(Check.DamageInspection, "Damage",
            "Attach fittings, struts, spars, skins, control surfaces and hinges, after the inspection the manual calls for.", Wanted.Look),
        new(Check.FlapDifference, "Flaps",
            "Both flaps at their up stop, the lever up. Compare the angles of the two flaps.", Wanted.Sided, "left flap hangs lower", "both alike", "right flap hangs lower", "0.2°"),
        new(Check.AileronNeutralOffset, "Ailerons at neutral",
            "Wheel or stick held at its rigged neutral. Look whether the ailerons lie in line with the wing, or stand for a roll to one side.",
            Wanted.Sided, "left aileron up, right aileron down", "in line", "right aileron up, left aileron down", "0.2°"),
        new(Check.CableTension, "Cables", "Tension of each cable with a tensiometer, by the table that belongs to its serial number, and the temperature it was measured at. Record each cable by itself.", Wanted.Force),
        new(Check.RudderTab, "Rudder and its tab", "Rudder held in line with the fin. Measure how far its fixed tab is bent; write in the findings how fin, cables and nose-wheel centring were found.",
            Wanted.Sided, "tab bent to the right", "in line", "tab bent to the left"),
        new(Check.AileronFloat, "Aileron float", "Controls free, as in flight hands off: from a photograph in flight, or trailing-edge shape and hinge height compared on the ground.",
            Wanted.Sided, "left aileron up, right aileron down", "in line", "right aileron up, left aileron down", "0.2°"),
        new(Check.AileronTab, "Aileron tab", "How far the fixed tab on one aileron is bent. A tab bent down pushes its aileron up.", Wanted.Sided, "bent up", "in line", "bent down"),
        new(Check.ControlFriction, "Control friction", "Force at the wheel rim, or at the grip of the stick, to move it through neutral.", Wanted.Force),
        new(Check.ContourSurvey, "Contour survey", "Skins, leading edges, tips, strut and wheel fairings of both wings, compared with templates or with each other.", Wanted.Look),
        new(Check.PanelIncidenceDifference, "Panel incidence", "Angle of each wing panel at the station the manual names, the aircraft levelled. An honest survey takes hours and is good to about 0.1°.",
            Wanted.Sided, "left panel has more incidence", "both alike", "right panel has more incidence", "0.1°"),
        new(Check.TipIncidenceDifference, "Tip incidence", "The same at the tip station: more incidence there means less washout.",
            Wanted.Sided, "left tip has more incidence", "both alike", "right tip has more incidence", "0.1°"),
    ];

    public static CheckSheet Of(Check check) => All.Single(sheet => sheet.Check == check);

    /// <summary>As it stands in an address and in a draft's key.</summary>
    public string Word => Mechanics.Contract.Wire.Word(Check);

    public static CheckSheet? Find(string? word) => All.FirstOrDefault(sheet => sheet.Word == word);

    public bool IsPrerequisite => CheckUnits.Serves(Check) is not null;

    public bool MayNotApply => Check is not Check.DamageInspection;

    /// <summary>The unit of a sided value, for people.</summary>
    public string Unit => Check == Check.BallOffset ? "ball widths" : "degrees";

}
