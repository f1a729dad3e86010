using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Contract;

public class BaggageTests
{
    static readonly Airframe WithShelf = Trainer.Airframe with
    {
        Baggage = [new("rear shelf", 0.1)],
        Reference = Trainer.Airframe.Reference with { Load = Trainer.TwoUp with { BaggageKg = new Dictionary<string, double> { ["rear shelf"] = 12 } } },
    };

    [Fact]
    public void A_compartment_and_what_lies_in_it_survive_writing_and_reading()
    {
        var read = ContractReader.ReadAirframe(ContractWriter.Write(WithShelf)).Value!;

        Assert.Equal(new BaggageCompartment("rear shelf", 0.1), Assert.Single(read.Baggage!));
        Assert.Equal(12, read.Reference.Load.BaggageKg!["rear shelf"]);
    }

    [Fact]
    public void An_airframe_without_compartments_is_written_as_before() =>
        Assert.DoesNotContain("baggage", ContractWriter.Write(Trainer.Airframe), StringComparison.OrdinalIgnoreCase);

    [Fact]
    public void Baggage_where_there_is_no_compartment_is_a_fault_at_its_path()
    {
        var text = ContractWriter.Write(WithShelf with { Baggage = null });

        Assert.Equal("$.reference.load.baggageKg['rear shelf']", Assert.Single(ContractReader.ReadAirframe(text).Faults).Path);
    }
}
