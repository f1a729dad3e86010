using Rigging.Squawks.Entries;
using Rigging.Squawks.People;
using Rigging.Web.Desk;

namespace Rigging.Web.Checks;

/// <summary>One check as typed, to the entry it makes. Fields are named as the entry's are, so that a rule's refusal finds its place.</summary>
static class CheckForm
{
    // Exact by definition.
    const double NewtonPerPoundForce = 4.4482216152605;

    public const string Minus = "minus", None = "none", Plus = "plus";

    public static GroundChecked Read(TypedFields fields, Typed typed, CheckSheet sheet) => new(
        sheet.Check,
        sheet.Wanted switch { Wanted.Sided => Sided(fields, typed, sheet), Wanted.Force => Force(fields, typed, sheet), _ => null },
        Sd(fields, typed, sheet),
        sheet.Wanted == Wanted.Look ? Clear(fields, typed) : null,
        sheet.Check == Check.CableTension ? fields.Text("cable") : null,
        sheet.Check == Check.CableTension ? Celsius(fields, typed) : null,
        sheet.Check == Check.AileronTab ? typed.Choice<Side>(fields["side"], "side", "Which wing's tab") : null,
        Guid.TryParse(fields["tool"], out var tool) ? new ToolId(tool) : null,
        null,
        null,
        fields.Text("finding"),
        null);

    public static GroundChecked NotApplicable(TypedFields fields, CheckSheet sheet) =>
        new(sheet.Check, null, null, null, null, null, null, null, null, null, null, fields["notApplicableReason"] ?? "");

    static double? Sided(TypedFields fields, Typed typed, CheckSheet sheet)
    {
        var size = typed.Number(fields["value"], "value", "How much", sheet.Unit);
        if (size < 0)
        {
            typed.Wrong("size-with-sign", $"How much: “{fields["value"]}” has a sign. Give the size alone and choose the side.", "value");
            return null;
        }
        switch (fields["way"])
        {
            case None when size is null or 0:
                return 0;
            case None:
                typed.Wrong("size-and-none", $"How much: “{fields["value"]}” given, and “{sheet.None}” chosen. One of them is not so.", "value");
                return null;
            case Minus or Plus when size is not null:
                return fields["way"] == Plus ? size : -size;
            case Minus or Plus:
                if (string.IsNullOrWhiteSpace(fields["value"])) typed.Wrong("value-missing", $"How much: nothing entered. Wanted a number of {sheet.Unit}.", "value");
                return null;
            default:
                typed.Wrong("side-missing", "Which way: nothing chosen. Choose what you saw.", "way");
                return null;
        }
    }

    static double? Force(TypedFields fields, Typed typed, CheckSheet sheet)
    {
        var name = sheet.Check == Check.CableTension ? "Tension" : "Force";
        if (string.IsNullOrWhiteSpace(fields["value"]))
        {
            typed.Wrong("value-missing", $"{name}: nothing entered. Wanted a number.", "value");
            return null;
        }
        var value = typed.Number(fields["value"], "value", name);
        if (value < 0) typed.Wrong("value-out-of-range", $"{name}: “{fields["value"]}” cannot be; wanted 0 or more.", "value");
        return NewtonsOf(value, fields);
    }

    static double? Sd(TypedFields fields, Typed typed, CheckSheet sheet)
    {
        if (sheet.Wanted is Wanted.Words or Wanted.Look) return null;
        var sd = typed.Number(fields["sd"], "sd", "Give or take");
        return sheet.Wanted == Wanted.Force ? NewtonsOf(sd, fields) : sd;
    }

    static double? NewtonsOf(double? value, TypedFields fields) => fields["unit"] == "lbf" && value is { } lbf ? Math.Round(lbf * NewtonPerPoundForce, 3) : value;

    static bool? Clear(TypedFields fields, Typed typed)
    {
        if (fields["clear"] is "yes" or "no") return fields["clear"] == "yes";
        typed.Wrong("value-missing", "What was found: nothing chosen. Choose clear or not clear.", "clear");
        return null;
    }

    static double? Celsius(TypedFields fields, Typed typed)
    {
        var value = typed.Number(fields["temperatureC"], "temperatureC", "Temperature");
        var celsius = fields["temperatureUnit"] == "F" && value is { } f ? Math.Round((f - 32) / 1.8, 1) : value;
        if (celsius is < -60 or > 60) typed.Wrong("value-out-of-range", $"Temperature: “{fields["temperatureC"]}” cannot be; wanted −60 to 60 °C.", "temperatureC");
        return celsius;
    }
}
