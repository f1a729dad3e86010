using System.Globalization;
using UnitsNet;

namespace Rigging.Mechanics.Fastening;

/// <summary>Torques and days in refusals, and limits that a change of unit must not trip, the same everywhere.</summary>
static class Words
{
    // 200 in·lb typed in newton-metres and back is not exactly 200.
    static readonly Torque Rounding = Torque.FromPoundForceInches(0.001);

    public static bool AtLeast(Torque torque, Torque least) => torque >= least - Rounding;

    public static bool AtMost(Torque torque, Torque greatest) => torque <= greatest + Rounding;

    public static string InLb(Torque torque) => torque.PoundForceInches.ToString("0.#", CultureInfo.InvariantCulture);

    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
