using Simfeel.Builds.Reading;
using Simfeel.Physics.Maths;

namespace Simfeel.Builds.Estimates;

/// <summary>Electronics, camera, extra parts, filter and sticks out of a sheet.</summary>
internal static class BodyRules
{
    private const double CameraDensity = 1200;

    /// <summary>The stack without its wiring, which depends on everything else.</summary>
    public static StackSpec Stack(ValueLedger ledger, FrameSpec frame, MotorBody motor)
    {
        double mass = ledger.OrRule("stack.mass_g", 0.3 * frame.Mounts.Count * motor.Mass, 0.3);
        double scale = Math.Cbrt(mass / 0.040);
        return new StackSpec
        {
            Mass = mass,
            Size = new(
                ledger.OrRule("stack.length_mm", 0.036 * scale, 0.2),
                ledger.OrRule("stack.width_mm", 0.036 * scale, 0.2),
                ledger.OrRule("stack.height_mm", 0.014 * scale, 0.3)),
            p_OC = new(
                ledger.OrDefault("stack.x_mm"),
                ledger.OrDefault("stack.y_mm"),
                ledger.OrRule("stack.z_mm", MiddleOfDeck(frame), 0.3)),
            Power = ledger.OrRule("stack.power_W", 400 * mass, 0.3),
            WiringMass = 0,
        };
    }

    public static CameraSpec Camera(ValueLedger ledger, FrameSpec frame)
    {
        double mass = ledger.OrDefault("camera.mass_g");
        double tilt = ledger.OrDefault("camera.tilt_deg");
        if (mass == 0) return new CameraSpec { Mass = 0, Size = 0, p_OC = Vec3.Zero, Tilt = tilt };
        return new CameraSpec
        {
            Mass = mass,
            Size = ledger.OrRule("camera.size_mm", Math.Cbrt(mass / CameraDensity), 0.2),
            p_OC = new(
                ledger.OrRule("camera.x_mm", frame.PlateLength / 2, 0.1),
                ledger.OrDefault("camera.y_mm"),
                ledger.OrRule("camera.z_mm", MiddleOfDeck(frame), 0.3)),
            Tilt = tilt,
        };
    }

    public static IReadOnlyList<ExtraSpec> Extras(ValueLedger ledger, BuildSheet sheet) =>
        [.. Enumerable.Range(1, sheet.ExtraCount).Select(i => Extra(ledger, i))];

    public static GyroSpec Gyro(ValueLedger ledger) => new() { LowPass_Hz = ledger.OrDefault("gyro.lowpass_Hz") };

    public static PilotSpec Pilot(ValueLedger ledger)
    {
        return new()
        {
            Roll = Stick("roll"),
            Pitch = Stick("pitch"),
            Yaw = Stick("yaw"),
            ThrottleHoverStick = ledger.OrDefault("pilot.throttle_hover_stick"),
        };

        StickSettings Stick(string axis) => new(
            ledger.OrDefault($"pilot.{axis}_centre_deg_s"),
            ledger.OrDefault($"pilot.{axis}_end_deg_s"),
            ledger.OrDefault($"pilot.{axis}_shape"));
    }

    private static double MiddleOfDeck(FrameSpec frame) => -((frame.PlateThickness / 2) + (frame.DeckHeight / 2));

    private static ExtraSpec Extra(ValueLedger ledger, int number)
    {
        string table = $"extra[{number}].";
        (ShapeKind kind, Vec3 size) = ledger.Word(table + "shape") switch
        {
            "box" => (ShapeKind.Box, new Vec3(Size("length"), Size("width"), Size("height"))),
            "cylinder" => (ShapeKind.Cylinder, new Vec3(Size("diameter"), Size("diameter"), Size("height"))),
            "rod" => (ShapeKind.Rod, new Vec3(Size("length"), 0, 0)),
            "sphere" => (ShapeKind.Sphere, new Vec3(Size("diameter"), Size("diameter"), Size("diameter"))),
            _ => (ShapeKind.Point, Vec3.Zero),
        };
        Vec3 place = new(ledger.OrDefault(table + "x_mm"), ledger.OrDefault(table + "y_mm"), ledger.OrDefault(table + "z_mm"));
        Mat3 attitude = Quat.FromEuler(
            ledger.OrDefault(table + "roll_deg"), ledger.OrDefault(table + "pitch_deg"), ledger.OrDefault(table + "yaw_deg")).ToMatrix();
        string name = ledger.Word(table + "name");
        return new(name.Length > 0 ? name : $"extra {number}", ledger.Given(table + "mass_g"), new(kind, size, place, attitude));

        double Size(string edge) => ledger.Given($"{table}{edge}_mm");
    }
}
