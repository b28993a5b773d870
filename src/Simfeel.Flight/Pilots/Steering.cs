namespace Simfeel.Flight.Pilots;

/// <summary>Steering along a course over the ground by an aim point.</summary>
/// <param name="course">Corners of the course, world x and y, m; the first is where it begins. The last leg goes on for ever.</param>
/// <param name="largestBank">Largest bank, rad.</param>
public sealed class Steering(IReadOnlyList<(double X, double Y)> course, double largestBank)
{
    /// <summary>How far ahead the pilot looks, s: three reaction times and a bit (common practice: look where you want to be).</summary>
    public const double LookAhead = 0.7;

    /// <summary>Least distance of the aim point, m.</summary>
    private const double LeastDistance = 3;

    private int _leg;

    /// <summary>Track, sideways acceleration and turn rate towards the aim point.</summary>
    /// <param name="seen">The craft as the pilot sees it.</param>
    /// <param name="gravity">m/s^2.</param>
    public (double Track, double Sideways, double TurnRate) Towards(in Sight seen, double gravity)
    {
        // where the craft will be when the thumbs' answer arrives
        double x = seen.p_WB.X + (VirtualPilot.ReactionTime * seen.v_WB.X), y = seen.p_WB.Y + (VirtualPilot.ReactionTime * seen.v_WB.Y);
        double speed = double.Hypot(seen.v_WB.X, seen.v_WB.Y);
        double distance = Math.Max(LeastDistance, LookAhead * speed);
        (double aimX, double aimY) = Aim(x, y, distance);
        double bearing = Math.Atan2(aimY - y, aimX - x), reach = double.Hypot(aimX - x, aimY - y);
        // hardly moving: turn on the spot towards it
        if (speed < 1) return (bearing, 0, 0);
        double track = Math.Atan2(seen.v_WB.Y, seen.v_WB.X), off = Math.IEEERemainder(bearing - track, 2 * Math.PI);
        double most = gravity * Math.Tan(largestBank);
        double wanted = 2 * speed * speed / reach * (Math.Abs(off) < Math.PI / 2 ? Math.Sin(off) : Math.Sign(off));
        double sideways = Math.Clamp(wanted, -most, most);
        double turnRate = sideways / speed;
        return (track + (turnRate * VirtualPilot.ReactionTime), sideways, turnRate);
    }

    /// <summary>The point a distance ahead along the course of the place on it that is nearest, never going back to an earlier leg.</summary>
    private (double X, double Y) Aim(double x, double y, double distance)
    {
        double along = Along(_leg, x, y);
        while (_leg < course.Count - 2 && along >= Length(_leg))
        {
            _leg++;
            along = Along(_leg, x, y);
        }
        double at = Math.Max(0, along) + distance;
        int leg = _leg;
        while (leg < course.Count - 2 && at > Length(leg))
        {
            at -= Length(leg);
            leg++;
        }
        (double startX, double startY) = course[leg];
        (double endX, double endY) = course[leg + 1];
        double length = Length(leg);
        return (startX + ((endX - startX) * at / length), startY + ((endY - startY) * at / length));
    }

    private double Length(int leg) => double.Hypot(course[leg + 1].X - course[leg].X, course[leg + 1].Y - course[leg].Y);

    private double Along(int leg, double x, double y)
    {
        (double startX, double startY) = course[leg];
        (double endX, double endY) = course[leg + 1];
        return (((x - startX) * (endX - startX)) + ((y - startY) * (endY - startY))) / Length(leg);
    }
}
