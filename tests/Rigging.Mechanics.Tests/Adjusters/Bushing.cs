using Rigging.Mechanics.Adjusters;
using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Tests.Contract;

namespace Rigging.Mechanics.Tests.Adjusters;

/// <summary>Eccentrics to try, made from the example airframe.</summary>
static class Bushing
{
    public const double Inch = 0.0254;

    public static readonly Airframe Example = ContractReader.ReadAirframe(Examples.Airframe).Value!;

    public static Airframe Airframe(double throwM, double sparSpacingM, int flats = 6, double maxAngleDeg = 90, BushingIn? bushingIn = BushingIn.FuselageFitting, NeutralOffset? offset = null) =>
        Example with
        {
            Wing = Example.Wing with { SparSpacingM = sparSpacingM },
            Eccentric = Example.Eccentric! with { ThrowMm = throwM * 1000, HeadFlats = flats, MaxAngleDeg = maxAngleDeg, BushingIn = bushingIn, NeutralOffset = offset },
        };

    public static Eccentric With(double throwM, double sparSpacingM, int flats = 6, double maxAngleDeg = 90) =>
        Eccentric.On(Airframe(throwM, sparSpacingM, flats, maxAngleDeg)).Value!;
}
