namespace Rigging.EndToEnd;

/// <summary>What follows signed work, whatever was moved. Each page is looked over, and kept as a picture by the name that is given.</summary>
static class AfterWork
{
    /// <summary>What a moved wing changes: a cable and both ailerons, with tools of the invented school.</summary>
    public static async Task MeasuresAgain(Visitor mechanic, int n, double newtons)
    {
        const string manual = "Manual 27-10, as it allows.";
        await Measures(mechanic, n, "cable-tension", ("cable", "left aileron"), ("value", newtons.ToString(System.Globalization.CultureInfo.InvariantCulture)), ("temperatureC", "18"), ("tool", "TM-1"), ("finding", manual));
        foreach (var surface in (string[])["aileron-left", "aileron-right"])
            await Measures(mechanic, n, "control-travel", ("surface", surface), ("upDeg", "20"), ("downDeg", "15"), ("tool", "INC-1"), ("finding", manual));
    }

    /// <summary>One check; a tool goes by its code.</summary>
    public static async Task Measures(Visitor mechanic, int n, string check, params (string Name, string Value)[] fields)
    {
        await mechanic.Goes($"/squawks/{n}/checks?check={check}");
        foreach (var (name, value) in fields) await mechanic.Sets((name, name == "tool" ? await mechanic.ChoiceOf(name, value) : value));
        await mechanic.Presses("Record");
        await mechanic.Page.WaitForURLAsync($"**/checks?saved={check}**");
    }

    public static async Task Inspects(Visitor inspector, int n, string sees, string keeps, string findings)
    {
        await inspector.Goes($"/squawks/{n}/inspection");
        await inspector.Sees(sees);
        await inspector.Keeps(keeps);
        await inspector.Sets(("seen-left-aileron-wheel-left", "Up"), ("seen-right-aileron-wheel-left", "Down"), ("seen-left-aileron-wheel-right", "Down"), ("seen-right-aileron-wheel-right", "Up"),
            ("seen-left-flap-flaps-down", "Down"), ("seen-right-flap-flaps-down", "Down"), ("fullTravelAtEveryFlapSetting", "yes"), ("securedAndLocked", "yes"), ("nothingLeftBehind", "yes"),
            ("findings", findings), ("passed", "yes"));
        await inspector.Presses("Go on to sign");
        await inspector.Signs(n, "independent-inspection");
    }

    public static async Task Approves(Visitor inspector, int n)
    {
        await inspector.Goes($"/squawks/{n}/approval");
        await inspector.Presses("Go on to sign");
        await inspector.Signs(n, "approval");
    }

    /// <param name="fields">What differs from flight to flight: how long, the load in litres and kilograms, the height, what was read.</param>
    public static async Task Flies(Visitor pilot, int n, string sees, string keeps, params (string, string)[] fields)
    {
        await pilot.Goes($"/squawks/{n}/check-flight");
        await pilot.Sees(sees);
        await pilot.Keeps(keeps);
        await pilot.Sets(("readWhatWasDisturbed", "true"), ("controlsCheckedBeforeFlight", "true"), ("crew", "second"), ("secondCrewDuty", "times and writes down the readings"), ("passengers", "0"), ("students", "0"),
            ("fuelMethod", "Dip"), ("fuelUnit", "L"), ("seatUnit", "kg"), ("powerPercent", "65"), ("air", "smooth"), ("method", "stopwatch-horizon"), ("stallsFlown", "yes"), ("everyFlapSetting", "yes"), ("satisfactory", "yes"),
            ("flownOn", await pilot.Today()));
        await pilot.Sets(fields);
        await pilot.Presses("Go on to sign");
        await pilot.Signs(n, "check-flight");
    }

    public static async Task Accepts(Visitor mechanic, int n, string keeps)
    {
        await mechanic.Goes($"/squawks/{n}/verdict");
        await mechanic.Keeps(keeps);
        await mechanic.Sees("Accepted");
        await mechanic.Sees("Before the flight");
        await mechanic.Presses("Put this verdict on record");
        await mechanic.Sees("On record:");
    }

    public static async Task Closes(Visitor inspector, int n, string statement)
    {
        await inspector.Goes($"/squawks/{n}/closing");
        await inspector.Sets(("statement", statement));
        await inspector.Presses("Go on to sign");
        await inspector.Signs(n, "closing");
        await inspector.Sees("Closed");
    }
}
