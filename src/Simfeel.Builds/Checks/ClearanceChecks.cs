using Simfeel.Builds.Assembly;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Checks;

/// <summary>Whether the propellers clear each other and the body.</summary>
internal static class ClearanceChecks
{
    /// <summary>Runs the checks; a plate that was only estimated cannot make a build wrong.</summary>
    public static void Run(Build build, bool plateGiven, Action<Severity, string, string, string> say)
    {
        Vec3[] hubs = [.. build.Frame.Mounts.Select(m => PartPlacer.Hub(build, m))];
        double diameter = build.Propeller.Blades.Diameter;
        // Discs that overlap reach the plates too; one message is enough.
        if (Neighbours(build, hubs, diameter, say)) Plate(build, hubs, diameter / 2, plateGiven ? Severity.Error : Severity.Warning, say);
    }

    /// <summary>False where discs overlap.</summary>
    private static bool Neighbours(Build build, Vec3[] hubs, double diameter, Action<Severity, string, string, string> say)
    {
        double least = double.PositiveInfinity;
        int first = 0, second = 0;
        for (int i = 0; i < hubs.Length; i++)
            for (int j = i + 1; j < hubs.Length; j++)
            {
                // Blades flap and bend: discs closer in height than a tenth of the diameter count as one plane.
                if (Math.Abs(hubs[i].Z - hubs[j].Z) > 0.1 * diameter) continue;
                double distance = double.Hypot(hubs[i].X - hubs[j].X, hubs[i].Y - hubs[j].Y);
                if (distance < least) (least, first, second) = (distance, i + 1, j + 1);
            }
        double gap = least - diameter;
        // Circles of the motors must clear too where ducts take up the gap.
        if (build.Frame.DuctMass > 0 && gap >= 0 && least < build.Frame.DuctDiameter)
            say(Severity.Warning, "frame.duct_mass_g", $"The ducts of rotors {first} and {second} overlap; usual is a distance of at least {1e3 * build.Frame.DuctDiameter:F1} mm between shafts.", "");
        if (gap < 0)
        {
            say(Severity.Error, "propeller.diameter_in",
                $"The discs of rotors {first} and {second} overlap by {-1e3 * gap:F1} mm; allowed is at most {least / TradeUnits.Inch:F2} in on this frame.",
                "take a smaller propeller or a larger wheelbase");
        }
        else if (gap < 0.015 * diameter)
        {
            say(Severity.Warning, "propeller.diameter_in",
                $"The discs of rotors {first} and {second} pass at {1e3 * gap:F1} mm; usual is at least {15 * diameter:F1} mm.",
                "arms bend in a crash and in a hard turn");
        }
        return gap >= 0;
    }

    private static void Plate(Build build, Vec3[] hubs, double radius, Severity severity, Action<Severity, string, string, string> say)
    {
        FrameSpec frame = build.Frame;
        double top = -((frame.PlateThickness / 2) + (frame.TopPlateThickness > 0 ? frame.DeckHeight + frame.TopPlateThickness : 0));
        for (int i = 0; i < hubs.Length; i++)
        {
            double dx = Math.Max(0, Math.Abs(hubs[i].X) - (frame.PlateLength / 2));
            double dy = Math.Max(0, Math.Abs(hubs[i].Y) - (frame.PlateWidth / 2));
            double gap = double.Hypot(dx, dy) - radius;
            bool sameHeight = hubs[i].Z > top && hubs[i].Z < frame.PlateThickness / 2;
            if (gap >= 0 || !sameHeight) continue;
            say(severity, "frame.plate_width_mm",
                $"The propeller of rotor {i + 1} hits the plates, {-1e3 * gap:F1} mm deep; the plates of {1e3 * frame.PlateLength:F0} x {1e3 * frame.PlateWidth:F0} mm must stay clear of its disc of {2e3 * radius:F0} mm; allowed are smaller plates.",
                "make the plates smaller or the wheelbase larger");
            return;
        }
    }
}
