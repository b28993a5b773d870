using Simfeel.Physics.Maths;
using Simfeel.Physics.Stand;

namespace Simfeel.CommandLine.Commands;

/// <summary>
/// The most telling words about the rows of a wind tunnel: the best efficiency, else the hover, else the range of thrust,
/// and where the torque changes sign.
/// </summary>
internal static class WindTunnelHeadline
{
    private const int MostChanges = 2;

    /// <summary>One or two sentences.</summary>
    public static IEnumerable<string> Of(IReadOnlyList<WindTunnelPoint> points)
    {
        WindTunnelPoint best = points.MaxBy(p => p.Efficiency ?? 0);
        bool drives = best.Efficiency > 0;
        yield return drives ? BestOf(best, points) : Lift(points);
        string torque = TorqueSign(points, saySteady: !drives && points.Any(p => p.Axial < 0));
        if (torque.Length > 0) yield return torque;
    }

    private static string BestOf(WindTunnelPoint best, IReadOnlyList<WindTunnelPoint> points)
    {
        bool across = points.Any(p => p.Edgewise != 0);
        string flow = across ? $"{best.Axial:F1} m/s axial and {best.Edgewise:F1} m/s edgewise flow" : $"{best.Axial:F1} m/s";
        double first = points.Min(p => p.Axial), last = points.Max(p => p.Axial);
        string end = first == last ? ""
            : best.Axial == last ? ", and still rising at the end of the axial range"
            : best.Axial == first ? ", and still rising towards the start of the axial range"
            : "";
        return (points.Count == 1 ? "its efficiency is" : "the best efficiency of these rows is")
            + $" {best.Efficiency:F2} at {best.Speed * TradeUnits.RpmPerRadian:F0} rpm in {flow} (J {best.AdvanceRatio:F2}){end}."
            + (across ? " The in-plane drag is not counted." : "");
    }

    private static string Lift(IReadOnlyList<WindTunnelPoint> points)
    {
        WindTunnelPoint most = points.MaxBy(p => p.Thrust), least = points.MinBy(p => p.Thrust);
        if (most.FigureOfMerit is double merit)
            return $"it lifts {most.Thrust:F2} N at {most.Speed * TradeUnits.RpmPerRadian:F0} rpm in still air, with a figure of merit of {merit:F2}.";
        return points.Count == 1
            ? $"its thrust is {most.Thrust:F2} N."
            : $"its thrust lies between {least.Thrust:F2} N (axial flow {least.Axial:F1} m/s) and {most.Thrust:F2} N ({most.Axial:F1} m/s) in these rows.";
    }

    /// <summary>Between which neighbouring axial speeds of one rotor speed and edgewise flow the torque changes its sign.</summary>
    /// <param name="points">The rows.</param>
    /// <param name="saySteady">Whether a torque that keeps its sign is worth a sentence.</param>
    private static string TorqueSign(IReadOnlyList<WindTunnelPoint> points, bool saySteady)
    {
        int speeds = points.Select(p => p.Speed).Distinct().Count(), flows = points.Select(p => p.Edgewise).Distinct().Count();
        List<string> changes = [];
        foreach (IGrouping<(double Speed, double Edgewise), WindTunnelPoint> series in points.GroupBy(p => (p.Speed, p.Edgewise)))
        {
            WindTunnelPoint[] rows = [.. series.OrderBy(p => p.Axial)];
            foreach ((WindTunnelPoint slow, WindTunnelPoint fast) in rows.Zip(rows.Skip(1)))
            {
                if (slow.Torque < 0 == fast.Torque < 0) continue;
                changes.Add($"between {slow.Axial:F1} and {fast.Axial:F1} m/s"
                    + (speeds > 1 ? $" at {slow.Speed * TradeUnits.RpmPerRadian:F0} rpm" : "")
                    + (flows > 1 ? $" with {slow.Edgewise:F1} m/s edgewise" : ""));
            }
        }
        if (changes.Count > 0)
        {
            string more = changes.Count > MostChanges ? $" and {changes.Count - MostChanges} times more" : "";
            return $"In axial flow its torque changes sign {string.Join(" and ", changes.Take(MostChanges))}{more}; where it is negative the flow drives the propeller.";
        }
        if (!saySteady) return "";
        return points[0].Torque < 0 ? "Its torque is negative in all these rows: the flow drives the propeller." : "Its torque is positive in all these rows: the flow never drives the propeller.";
    }
}
