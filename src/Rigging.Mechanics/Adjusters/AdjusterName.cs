using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Adjusters;

/// <summary>What a control is called in a sentence. A fork always with its spar: where one is turned, a strut stands at each.</summary>
public static class AdjusterName
{
    public static string InWords(this AdjustableControl control) => control switch
    {
        AdjustableControl.LeftStrutFork => "left rear strut fork",
        AdjustableControl.RightStrutFork => "right rear strut fork",
        _ => Wire.Word(control).Replace('-', ' '),
    };
}
