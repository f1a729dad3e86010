using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Contract;

public sealed class ContractWriterTests
{
    [Fact]
    public void The_answer_is_written_exactly_in_the_form_of_the_example()
    {
        var response = ContractWriter.ReadBack(Examples.Response)!;

        Assert.Equal(Cause.ControlFriction, response.Causes[2].Cause);
        Assert.Null(response.Causes[2].Probability);
        Assert.True(Examples.SameJson(Examples.Response, ContractWriter.Write(response)));
    }

    [Fact]
    public void An_airframe_is_written_as_it_was_read_with_the_usual_fuel_density_said()
    {
        var said = Examples.Edited(Examples.Airframe, "reference.load.fuelKgPerL", "0.72");

        Assert.True(Examples.SameJson(said, ContractWriter.Write(ContractReader.ReadAirframe(Examples.Airframe).Value!)));
    }

    [Fact]
    public void A_request_survives_writing_and_reading()
    {
        var request = Examples.Edited(Examples.Request, "settings.rightEccentricDeg", """{ "front": 3, "rear": -4 }""");
        request = Examples.Edited(request, "events", """["storm-parking", "correction-without-effect:flap-difference"]""");
        request = Examples.Edited(request, "trims", """{ "roll": "one mark left", "yaw": "neutral" }""");

        var written = ContractWriter.Write(ContractReader.ReadRequest(request).Value!);
        var again = ContractReader.ReadRequest(written);

        Assert.Empty(again.Faults);
        Assert.Equal(written, ContractWriter.Write(again.Value!));
        Assert.Contains("correction-without-effect:flap-difference", written, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("{}")]
    [InlineData("null")]
    [InlineData("[1]")]
    public void What_is_no_answer_is_not_read_back(string json) => Assert.Null(ContractWriter.ReadBack(json));
}
