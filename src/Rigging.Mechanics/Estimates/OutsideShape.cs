using System.Globalization;
using Rigging.Mechanics.Contract;

namespace Rigging.Mechanics.Estimates;

/// <summary>The fuselage and where the wing meets it, with what had to be assumed for want of it on file.</summary>
/// <remarks>
/// Shares of the span are judgement by two published four-seat types: 0.69 and 0.82 of the span long, 0.13 and 0.14 deep
/// (the first read in a public teaching script for a course of 2001, the second from memory).
/// </remarks>
sealed class OutsideShape
{
    const double LengthPerSpan = 0.75, DepthPerSpan = 0.13, WidthPerSpan = 0.11;

    /// <summary>The root's quarter chord lies so much of the depth off the fuselage's middle on a high or low wing; judgement.</summary>
    const double RootOffMiddle = 0.4;

    /// <summary>Where nobody says, high, mid and low are as likely: the standard deviation of plus, minus and none of something.</summary>
    const double AnyOfThree = 0.8165;

    public OutsideShape(Airframe airframe)
    {
        var (spanM, onFile) = (airframe.Wing.SpanM, airframe.Fuselage);
        LengthM = onFile?.LengthM ?? LengthPerSpan * spanM;
        DepthM = onFile?.DepthM ?? DepthPerSpan * spanM;
        WidthM = onFile?.WidthM ?? WidthPerSpan * spanM;
        FuselageIsAssumed = onFile is not { LengthM: not null, DepthM: not null, WidthM: not null };
        var position = airframe.Wing.Position
            ?? (airframe.Wing.Bracing is Bracing.SingleStrutAtFrontSpar or Bracing.SingleStrutAtRearSpar or Bracing.StrutAtEachSpar ? WingPosition.High : null);
        RootBelowMiddle = position switch
        {
            WingPosition.High => new(-RootOffMiddle, 0),
            WingPosition.Low => new(RootOffMiddle, 0),
            WingPosition.Mid => new(0, 0),
            _ => new(0, AnyOfThree * RootOffMiddle),
        };
        Assumed = Sentence(airframe.Wing.Position is null, position is null);
    }

    public double LengthM { get; }

    public double DepthM { get; }

    public double WidthM { get; }

    public bool FuselageIsAssumed { get; }

    /// <summary>Of a circle as large as the section.</summary>
    public double DiameterM => Math.Sqrt(DepthM * WidthM);

    /// <summary>The wing root's quarter chord below the fuselage's middle, in depths; with a deviation where nobody says where the wing is.</summary>
    public Share RootBelowMiddle { get; }

    /// <summary>In words, to stand behind a method; empty where all is on file.</summary>
    public string Assumed { get; }

    string Sentence(bool positionAssumed, bool positionUnknown)
    {
        var fuselage = FuselageIsAssumed
            ? string.Create(CultureInfo.InvariantCulture, $"; fuselage not all on file: taken as {LengthM:0.0} × {DepthM:0.00} × {WidthM:0.00} m by the span")
            : "";
        return fuselage + (positionUnknown ? "; wing high, mid or low not on file" : positionAssumed ? "; wing taken as high, for it has a strut" : "");
    }
}
