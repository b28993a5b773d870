using Simfeel.Flight.Contact;
using Simfeel.Flight.Fields;
using Simfeel.Physics;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Tests.Contact;

/// <summary>Contact alone, without air and kernel, against closed forms of mechanics.</summary>
public class ContactTests
{
    private const double Step = 1.0 / 8000, Gravity = 9.80665;

    private static readonly Craft Frame = Starters.Get("wagtail").Unit.Craft;

    /// <summary>
    /// Linear spring and dashpot without pull: the ball leaves where the force is 0, so e = exp(-(b/w)(pi - atan(2 b w/(w^2 - b^2))))
    /// with b = zeta w0 and w^2 = w0^2 - b^2; follows from x'' + 2 b x' + w0^2 x = 0.
    /// </summary>
    [Theory]
    [InlineData(0.5)]
    [InlineData(3)]
    [InlineData(30)]
    public void A_ball_bounces_with_the_share_of_speed_that_spring_and_damper_leave(double speed)
    {
        double b = CraftContact.Damping, w = Math.Sqrt(1 - (b * b));
        double share = Math.Exp(-b / w * (Math.PI - Math.Atan(2 * b * w / ((w * w) - (b * b)))));
        CraftContact contact = new(Ball(0.02), ContactWorld.Flat(0));
        ContactMotion motion = new(new(0, 0, -0.0201), new(0, 0, speed), Mat3.Identity, Vec3.Zero);

        for (int n = 0; n < 400; n++) Advance(contact, ref motion, 0);

        Assert.InRange(-motion.v_WB.Z / speed, 0.95 * share, 1.05 * share);
    }

    /// <summary>Coulomb friction: v^2/(2 mu g).</summary>
    [Theory]
    [InlineData(2)]
    [InlineData(8)]
    public void A_sliding_body_stops_after_its_way_of_friction(double speed)
    {
        ContactBody sledge = new(Heavy(), [new(new(0.1, 0, 0.02), 0.01), new(new(-0.1, 0, 0.02), 0.01), new(new(0, 0.1, 0.02), 0.01)]);
        CraftContact contact = new(sledge, ContactWorld.Flat(0));
        // settled: each of the three springs carries a third
        double sunk = Gravity / (CraftContact.Frequency * CraftContact.Frequency * 3);
        ContactMotion motion = new(new(0, 0, sunk - 0.03), new(speed, 0, 0), Mat3.Identity, Vec3.Zero);

        for (int n = 0; n < 8000 * 3; n++) Advance(contact, ref motion, Gravity);

        double way = speed * speed / (2 * CraftContact.Friction * Gravity);
        Assert.InRange(motion.p_WB.X, 0.98 * way, 1.02 * way);
        Assert.True(motion.v_WB.Length < 1e-3);
    }

    [Fact]
    public void Throws_never_gain_energy()
    {
        ContactBody body = Starters.Get("wagtail").Unit.Body!;
        // a body of equal moments of inertia turns on at its rate, so that nothing but contact changes its energy
        const double inertia = 1.5e-3;
        ContactBody round = new(Frame with { I_BBcm_B = Mat3.Diagonal(inertia, inertia, inertia) }, body.Probes.ToArray());
        Random random = new(5);
        for (int run = 0; run < 300; run++)
        {
            CraftContact contact = new(round, ContactWorld.Flat(0));
            Quat q_WB = Quat.FromEuler(6 * random.NextDouble(), 3 * random.NextDouble(), 0);
            ContactMotion motion = new(
                new(0, 0, -0.3), new(Between(random, 20), Between(random, 20), 15 * random.NextDouble()), q_WB.ToMatrix(),
                new(Between(random, 40), Between(random, 40), Between(random, 40)));
            double energy = Energy(motion);
            for (int n = 0; n < 8000; n++)
            {
                if (n % 8 == 0) Look(contact, motion, 8 * Step);
                Fall(contact, ref motion, Gravity);
                q_WB = Turned(q_WB, motion.w_WB_B);
                motion.R_WB = q_WB.ToMatrix();
                // springs hold energy while they touch, so it is counted in the air
                if (contact.Touching) continue;
                double now = Energy(motion);
                Assert.True(now < energy + (1e-3 * Math.Abs(energy)) + 1e-4, $"run {run}: {energy} J became {now} J");
                energy = Math.Min(energy, now);
            }
            Assert.True(motion.p_WB.Z < 0.01, $"run {run}: fell through to {motion.p_WB.Z}");
        }

        double Energy(in ContactMotion m) =>
            (0.5 * Frame.Mass * Vec3.Dot(m.v_WB, m.v_WB)) + (0.5 * inertia * Vec3.Dot(m.w_WB_B, m.w_WB_B)) - (Frame.Mass * Gravity * m.p_WB.Z);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(30)]
    [InlineData(60)]
    public void Nothing_flies_through_a_wall_of_20_cm(double speed)
    {
        FieldMap map = new()
        {
            Name = "wall",
            StartHeading = 0,
            PilotEye = default,
            Land = [new(-500, -500, 0), new(500, -500, 0), new(500, 500, 0), new(-500, 500, 0)],
            SeaDepth = 5,
            Solids =
            [
                new(SolidKind.Wall, SolidShape.Box, new(3, 0, -20), new(0.2, 400, 40), 0.3),
                new(SolidKind.Pole, SolidShape.Capsule, new(-3, 0, -5), new(0.1, 0.1, 10), 0),
            ],
            Gates = [],
            Marks = [],
        };
        ContactWorld world = ContactWorld.Of(map);
        ContactBody body = Starters.Get("wagtail").Unit.Body!;
        Random random = new(8);
        for (int run = 0; run < 60; run++)
        {
            CraftContact contact = new(body, world);
            ContactMotion motion = new(
                new(0, 0, -10), new(speed, Between(random, speed / 4), 0),
                Quat.FromEuler(6 * random.NextDouble(), 3 * random.NextDouble(), 6 * random.NextDouble()).ToMatrix(), Vec3.Zero);
            double closest = 0;
            for (int n = 0; n < 8000 * 8 / speed; n++)
            {
                if (n % 8 == 0) Look(contact, motion, 8 * Step);
                Fall(contact, ref motion, 0);
                // distance from the wall's middle plane, which is turned by 0.3 rad
                double before = ((motion.p_WB.X - 3) * Math.Cos(0.3)) + (motion.p_WB.Y * Math.Sin(0.3));
                Assert.True(before < 0, $"run {run}: the centre passed the wall");
                closest = Math.Max(closest, contact.ImpactSpeed);
            }
            Assert.True(closest > 0.5 * speed, $"run {run}: it never touched, {closest} m/s");
        }
    }

    [Fact]
    public void A_disc_that_meets_a_pole_strikes_it_with_the_rotor_that_met_it()
    {
        FieldMap map = new()
        {
            Name = "pole",
            StartHeading = 0,
            PilotEye = default,
            Land = [new(-50, -50, 0), new(50, -50, 0), new(50, 50, 0), new(-50, 50, 0)],
            SeaDepth = 5,
            Solids = [new(SolidKind.Pole, SolidShape.Capsule, new(0, 0, -2), new(0.06, 0.06, 4), 0)],
            Gates = [],
            Marks = [],
        };
        ContactBody body = Starters.Get("wagtail").Unit.Body!;
        for (int k = 0; k < body.Rotors.Count; k++)
        {
            CraftContact contact = new(body, ContactWorld.Of(map));
            Vec3 outward = body.Rotors[k].p_BcmR_B with { Z = 0 };
            // the pole stands four fifths of a radius outside the hub
            Vec3 place = -(1 + (0.8 * body.Rotors[k].Radius / outward.Length)) * outward;
            Look(contact, new(place with { Z = -1.5 }, Vec3.Zero, Mat3.Identity, Vec3.Zero), 0.001);

            Assert.Equal(1 << k, contact.StruckRotors);
        }
    }

    private static ContactBody Ball(double radius) => new(Heavy(), [new(Vec3.Zero, radius)]);

    /// <summary>The craft's mass with so much inertia that it does not turn.</summary>
    private static Craft Heavy() => Frame with { I_BBcm_B = Mat3.Diagonal(1e3, 1e3, 1e3) };

    private static void Advance(CraftContact contact, ref ContactMotion motion, double gravity)
    {
        Look(contact, motion, Step);
        Fall(contact, ref motion, gravity);
    }

    private static void Fall(CraftContact contact, ref ContactMotion motion, double gravity)
    {
        motion.v_WB += new Vec3(0, 0, gravity * Step);
        contact.Push(ref motion, Step);
        motion.p_WB += Step * motion.v_WB;
    }

    private static Quat Turned(Quat q, Vec3 w)
    {
        double angle = w.Length * Step;
        Quat turned = angle > 0 ? q * Quat.FromAxisAngle(w / w.Length, angle) : q;
        double n = 1 / turned.Norm;
        return new(n * turned.W, n * turned.X, n * turned.Y, n * turned.Z);
    }

    private static double Between(Random random, double size) => size * ((2 * random.NextDouble()) - 1);

    private static void Look(CraftContact contact, in ContactMotion motion, double ahead)
    {
        contact.Look(motion.p_WB, motion.v_WB, ahead);
        if (contact.IsNear) contact.Strike(motion);
    }
}
