using Rigging.Mechanics.Contract;
using Rigging.Mechanics.Motion;

namespace Rigging.Mechanics.Tests.Motion;

public class AllocationTests
{
    static readonly Reading[] Readings =
    [
        new BankAfter(10, -6), new TimeToBank(-10, 20), new RollRate(-0.5), new HeadingRate(0), new HeadingChange(60, 0), new BallReading(0),
        new WheelAngle(4), new WheelForce(3), new FuelDifference(6), new Rolls(RollSide.Left, RollStrength.Slowly),
    ];

    [Fact]
    public void A_predicted_reading_takes_no_memory_once_its_time_was_asked_for()
    {
        var point = new Aeroplane(Trainer.Airframe).At(Trainer.Point(Manoeuvre.ReleaseAll, 95, Readings[0]));
        Asymmetry asymmetry = new(0.0001, -0.0004, 0.0002, 30, 0.01, 0.005, 0.02, 0.1);
        var warm = Sum(point, asymmetry);

        var before = GC.GetAllocatedBytesForCurrentThread();
        var sum = Sum(point, asymmetry);

        Assert.Equal(0, GC.GetAllocatedBytesForCurrentThread() - before);
        Assert.Equal(warm, sum);
        Assert.True(double.IsFinite(sum) && sum != 0);
    }

    static double Sum(FlightPoint point, Asymmetry asymmetry)
    {
        var sum = 0.0;
        for (var manoeuvre = Manoeuvre.ReleaseAll; manoeuvre <= Manoeuvre.BalanceFuel; manoeuvre++)
            foreach (var reading in Readings)
                sum += PilotReading.Predict(point, manoeuvre, reading, asymmetry) ?? 0;
        return sum;
    }
}
