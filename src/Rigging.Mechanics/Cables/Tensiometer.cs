using System.Globalization;
using Rigging.Mechanics.Contract;
using UnitsNet;

namespace Rigging.Mechanics.Cables;

/// <summary>One row of a tensiometer's calibration card.</summary>
/// <param name="Cable">Diameter as on the card, such as <c>1/8</c>.</param>
/// <param name="Riser">The riser block that belongs to the row, as marked on it.</param>
/// <param name="Reading">On the instrument's own scale.</param>
public sealed record TensiometerRow(string Cable, string Riser, double Reading, Force Tension);

/// <summary>What somebody read: always with the instrument it was read on.</summary>
public sealed record TensiometerReading(string Serial, string Cable, string Riser, double Reading);

/// <summary>One tensiometer with the card that belongs to its serial number. The same reading means another tension on the next instrument.</summary>
public sealed class Tensiometer(string serial, IReadOnlyList<TensiometerRow> card)
{
    public string Serial { get; } = serial;

    /// <summary>
    /// The tension behind a reading, straight between the card's rows. Refused as <c>other-instrument</c> when it was read on
    /// another serial number, <c>not-on-card</c> for a cable and riser that the card does not have, and <c>off-card</c> outside
    /// its readings: a card is not continued beyond its ends.
    /// </summary>
    public Answer<MeasuredTension> TensionOf(TensiometerReading reading)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.Serial != Serial)
            return new Refusal("other-instrument", $"Read on serial number {reading.Serial}; this card belongs to {Serial}.");
        var rows = card.Where(row => row.Cable == reading.Cable && row.Riser == reading.Riser).OrderBy(row => row.Reading).ToArray();
        if (rows.Length == 0)
            return new Refusal("not-on-card", $"The card of {Serial} has nothing for a {reading.Cable} cable with riser {reading.Riser}.");
        var above = Array.FindIndex(rows, row => row.Reading >= reading.Reading);
        if (above >= 0 && rows[above].Reading.Equals(reading.Reading))
            return new MeasuredTension(rows[above].Tension, Serial);
        if (above <= 0)
            return new Refusal("off-card", string.Create(CultureInfo.InvariantCulture,
                $"A reading of {reading.Reading:0.#} is outside the card of {Serial}: {rows[0].Reading:0.#} to {rows[^1].Reading:0.#}."));
        var (low, high) = (rows[above - 1], rows[above]);
        return new MeasuredTension(low.Tension + (high.Tension - low.Tension) * ((reading.Reading - low.Reading) / (high.Reading - low.Reading)), Serial);
    }
}

/// <param name="Serial">Of the instrument.</param>
public sealed record MeasuredTension(Force Tension, string Serial);
