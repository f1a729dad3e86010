using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Tests.Contract;

public sealed class WireTests
{
    [Fact]
    public void Words_are_the_contract_s()
    {
        Assert.Equal(["release-all", "release-wheel", "hold-neutral", "hold-level", "hold-straight", "balance-fuel"], Wire.Words<Manoeuvre>());
        Assert.Equal(
            ["bank-after", "time-to-bank", "roll-rate", "heading-rate", "heading-change", "ball", "wheel-angle", "wheel-force", "fuel-difference", "rolls"],
            Wire.Words<ReadingKind>());
        Assert.Equal(
            [
                "fuel-and-loading", "panel-incidence-difference", "tip-incidence-difference", "flap-difference", "contour-or-fairing", "aileron-float",
                "aileron-neutral-offset", "rudder-or-fin-offset", "slipstream", "control-friction", "instrument-misalignment", "damage-or-misassembly",
            ],
            Wire.Words<Cause>());
        Assert.Equal(
            [
                "panel-incidence-difference", "tip-incidence-difference", "flap-difference", "aileron-float", "aileron-neutral-offset", "aileron-tab", "rudder-tab",
                "cable-tension", "ball-offset", "control-friction", "damage-inspection", "contour-survey",
            ],
            Wire.Words<GroundCheckKind>());
        Assert.Equal(["stopwatch-horizon", "stopwatch-compass", "eye", "instrument", "flight-log"], Wire.Words<ReadingMethod>());
        Assert.Equal(
            [
                "hard-landing", "ground-strike", "wing-removed", "wing-replaced", "repaint", "control-replaced", "cables-adjusted", "flap-overspeed",
                "storm-parking", "repair", "sudden-onset", "full-control", "control-jammed", "first-flight-after-assembly", "unexplained-recurrence",
                "damage-suspected", "correction-without-effect",
            ],
            Wire.Words<EventKind>());
    }

    [Theory]
    [InlineData("0")]
    [InlineData("Left")]
    [InlineData("left ")]
    [InlineData("")]
    public void Nothing_but_the_word_itself_is_taken(string word) => Assert.False(Wire.TryRead<Side>(word, out _));
}
