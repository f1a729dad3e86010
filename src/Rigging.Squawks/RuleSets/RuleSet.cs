using System.Reflection;
using System.Text.Json;
using NodaTime;
using Rigging.Squawks.People;

namespace Rigging.Squawks.RuleSets;

/// <summary>A certificate a rule set knows, by our code, with the words people read.</summary>
public sealed record CertificateKind(string Code, string Words);

/// <summary>Certificates of these kinds approve work only with recent experience on file.</summary>
public sealed record RecentExperience(IReadOnlyList<string> Kinds, string Basis);

/// <summary>The jurisdiction's and the school's rules as data: who may certify and fly, what is law, the wording, retention.</summary>
/// <param name="VerifyAgainstCurrentText">Not read by us in the current text: shown as such wherever the rule set speaks.</param>
/// <param name="MayCertify">Certificate kinds that may approve flight-control rigging for return to service.</param>
/// <param name="WorkerMayCertify">Whether the mechanic who did the work may also approve it.</param>
/// <param name="InspectionIsLaw">Whether the independent inspection is law; else it is school policy, and says so.</param>
/// <param name="RecentExperience">Null where the rule set asks for none.</param>
/// <param name="ReleaseWording">The statement above the certifier's signature.</param>
public sealed record RuleSet(
    string Id,
    string Name,
    bool VerifyAgainstCurrentText,
    IReadOnlyList<CertificateKind> CertificateKinds,
    IReadOnlyList<string> MayCertify,
    IReadOnlyList<string> MayFlyCheck,
    bool WorkerMayCertify,
    bool InspectionIsLaw,
    string InspectionBasis,
    string ReleaseWording,
    string PassengerBarBasis,
    string Retention,
    IReadOnlyList<string> Sources,
    RecentExperience? RecentExperience = null)
{
    static readonly JsonSerializerOptions Options = new(JsonSerializerDefaults.Web);

    /// <summary>The rule sets that ship with the program, by id.</summary>
    public static IReadOnlyDictionary<string, RuleSet> Shipped { get; } = Load();

    public string WordsFor(string certificateKind) =>
        CertificateKinds.FirstOrDefault(kind => kind.Code == certificateKind)?.Words ?? certificateKind;

    /// <summary>Whether recent experience, where this rule set asks for it, is stated up to that day.</summary>
    public bool RecentEnough(Certificate certificate, LocalDate day) =>
        RecentExperience is not { } needed || !needed.Kinds.Contains(certificate.Kind) || certificate.RecentOn(day);

    static Dictionary<string, RuleSet> Load()
    {
        var assembly = Assembly.GetExecutingAssembly();
        return assembly.GetManifestResourceNames()
            .Where(name => name.StartsWith("RuleSets.", StringComparison.Ordinal))
            .Select(name =>
            {
                using var stream = assembly.GetManifestResourceStream(name)!;
                return JsonSerializer.Deserialize<RuleSet>(stream, Options)!;
            })
            .ToDictionary(set => set.Id);
    }
}
