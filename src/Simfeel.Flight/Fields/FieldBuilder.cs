using Simfeel.Builds.Reading;
using Simfeel.Flight.Contact;
using Simfeel.Physics.Maths;

namespace Simfeel.Flight.Fields;

/// <summary>Makes a field out of checked tables, and says what does not fit together.</summary>
internal sealed class FieldBuilder(DiagnosticBag bag)
{
    /// <summary>Room kept free around the start, m: the longest craft and its discs.</summary>
    private const double StartRoom = 2;

    private readonly List<FieldSolid> _solids = [];
    private readonly List<FieldTable> _owners = [];
    private readonly List<FieldGate> _gates = [];
    private readonly List<FieldMark> _marks = [];
    private ContactWorld _ground = ContactWorld.Flat(0);

    /// <summary>The field, or null with findings.</summary>
    public static FieldMap? Make(IReadOnlyList<FieldTable> tables, DiagnosticBag bag) => new FieldBuilder(bag).Make(tables);

    private FieldMap? Make(IReadOnlyList<FieldTable> tables)
    {
        FieldTable field = tables.First(table => table.Kind == "field");
        FieldTable[] corners = [.. tables.Where(table => table.Kind == "land")];
        FieldMap bare = new()
        {
            Name = field.Text("name"),
            StartHeading = field["start_heading_deg"],
            PilotEye = new(field["pilot_north_m"], field["pilot_east_m"], -field["pilot_eye_height_m"]),
            SeaDepth = field["sea_depth_m"],
            Land = [.. corners.Select(corner => corner.Foot)],
            Solids = [],
            Gates = [],
            Marks = [],
        };
        if (!FieldChecks.Land(bare, corners, field, StartRoom, bag)) return null;
        _ground = ContactWorld.Of(bare);
        if (!tables.All(Add) || bag.HasErrors) return null;
        FieldMap map = bare with { Solids = _solids, Gates = _gates, Marks = _marks };
        FieldChecks.Standing(map, _owners, field, StartRoom, bag);
        return bag.HasErrors ? null : map;
    }

    /// <summary>Adds what a table stands for; false, with a finding, where that makes too much of it.</summary>
    private bool Add(FieldTable t)
    {
        int count = t.Count;
        Vec3 step = t.Step;
        if (count > 1 && step == Vec3.Zero)
        {
            bag.Error(t.PlaceOf("count"), t.Kind + ".count", $"{count}", $"All {count} would stand in one place; a row needs step_north_m or step_east_m, {FieldFormat.StepRange}.", "add the step from one to the next");
            return true;
        }
        for (int n = 0; n < count; n++)
        {
            if (!AddOne(t, n * step)) return true;
            while (_owners.Count < _solids.Count) _owners.Add(t);
            if (_solids.Count > FieldFormat.MostSolids)
                return TooMany(t, "solid things", FieldFormat.MostSolids, "a gate counts 3 or 4, a tree 2, a wall with a gap 2 or 3");
            if (_marks.Count > FieldFormat.MostMarks)
                return TooMany(t, "lines and rings", FieldFormat.MostMarks, "leave some out");
        }
        return true;
    }

    private bool TooMany(FieldTable t, string things, int most, string hint)
    {
        bag.Error(t.At, t.Kind, "", $"With this table the field has more than {most} {things}; allowed are 0 to {most}.", hint);
        return false;
    }

    private bool AddOne(FieldTable t, Vec3 shift)
    {
        Vec3 foot = t.Foot + shift;
        switch (t.Kind)
        {
            case "building":
                Stand(SolidKind.Building, SolidShape.Box, foot, new(t["length_m"], t["width_m"], t["height_m"]), t["heading_deg"]);
                return true;
            case "wall": return Wall(t);
            case "gate": return Gate(t);
            case "pole" or "lighthouse":
                if (t["height_m"] < t["diameter_m"])
                    return Refuse(t, "height_m", $"A {t.Kind} is at least as high as wide; its diameter_m is {t["diameter_m"]:G6} m.", "");
                Stand(t.Kind == "pole" ? SolidKind.Pole : SolidKind.Lighthouse, SolidShape.Capsule, foot, new(t["diameter_m"], t["diameter_m"], t["height_m"]), 0);
                return true;
            case "tree": return Tree(t, foot);
            case "rock": return Rock(t, foot);
            case "line":
                _marks.Add(new(t.From + shift, t.To + shift, 0, t["paint_m"]));
                return true;
            case "ring":
                _marks.Add(new(foot, foot, t["radius_m"], t["paint_m"]));
                return true;
            default: return true;
        }
    }

    /// <summary>A solid that stands on the ground.</summary>
    private void Stand(SolidKind kind, SolidShape shape, Vec3 foot, Vec3 size, double heading) =>
        _solids.Add(new(kind, shape, foot - (size.Z / 2 * Vec3.UnitZ), size, heading));

    private bool Wall(FieldTable t)
    {
        Vec3 run = t.To - t.From;
        double length = run.Length, gap = t["gap_m"], first = t["gap_from_m"], height = t["height_m"], lintel = t["lintel_m"];
        if (length < FieldFormat.LeastWall)
            return Refuse(t, "to_north_m", $"The wall is {length:0.###} m long; allowed is {FieldFormat.LeastWall} m or more.", "move one of its ends");
        // a gap too narrow for its ends to differ is none
        if (first + gap == first)
        {
            Piece(0, length, 0, height);
            return true;
        }
        if (first + gap >= length || first == 0)
            return Refuse(t, "gap_m", $"The gap does not lie inside the wall; gap_from_m must be above 0, and gap_from_m + gap_m below the wall's length of {length:0.###} m.", "move the gap or make it narrower");
        if (lintel >= height)
            return Refuse(t, "lintel_m", $"The lintel lies above the wall; allowed is 0 to below {height:G6} m, its height_m.", "leave it out for a gap that is open above");
        Piece(0, first, 0, height);
        Piece(first + gap, length, 0, height);
        if (lintel > 0) Piece(first, first + gap, lintel, height);
        return true;

        void Piece(double from, double to, double bottom, double top)
        {
            Vec3 centre = t.From + ((from + to) / 2 / length * run) - ((bottom + top) / 2 * Vec3.UnitZ);
            _solids.Add(new(SolidKind.Wall, SolidShape.Box, centre, new(to - from, t["thickness_m"], top - bottom), Math.Atan2(run.Y, run.X)));
        }
    }

    private bool Gate(FieldTable t)
    {
        string name = t.Text("name");
        if (_gates.Any(gate => gate.Name == name))
        {
            bag.Error(t.PlaceOf("name"), "gate.name", $"\"{name}\"", "Another gate has this name already; every gate needs one of its own.", "give it another name");
            return false;
        }
        double width = t["width_m"], height = t["height_m"], bottom = t["base_m"], bar = t["bar_m"], heading = t["heading_deg"];
        // posts down to the ground, a beam on top, a sill where the opening starts above it
        double post = bottom + height + bar, side = (width + bar) / 2;
        Bar(-side, bar, 0, post);
        Bar(side, bar, 0, post);
        Bar(0, width, bottom + height, post);
        if (bottom > 0) Bar(0, width, Math.Max(bottom - bar, 0), bottom);
        _gates.Add(new(name, t.Foot - ((bottom + (height / 2)) * Vec3.UnitZ), heading, width, height));
        return true;

        void Bar(double aside, double size, double low, double high)
        {
            (double sin, double cos) = Math.SinCos(heading);
            Vec3 centre = t.Foot + new Vec3(-sin * aside, cos * aside, -(low + high) / 2);
            _solids.Add(new(SolidKind.Gate, SolidShape.Box, centre, new(bar, size, high - low), heading));
        }
    }

    private bool Tree(FieldTable t, Vec3 foot)
    {
        double height = t["height_m"], crown = t["crown_m"], trunk = t["trunk_m"];
        if (trunk >= crown)
            return Refuse(t, "trunk_m", $"The trunk is as wide as the crown; it must be narrower than crown_m, {crown:G6} m.", "");
        if (crown > height)
            return Refuse(t, "crown_m", $"The crown is wider than the tree is high; allowed is at most height_m, {height:G6} m.", "");
        // the crown takes the upper two thirds, or is a ball where it is wider than that
        double tall = Math.Max(crown, 2 * height / 3);
        Stand(SolidKind.Trunk, SolidShape.Capsule, foot, new(trunk, trunk, height - (tall / 2)), 0);
        _solids.Add(new(SolidKind.Crown, SolidShape.Capsule, foot - ((height - (tall / 2)) * Vec3.UnitZ), new(crown, crown, tall), 0));
        return true;
    }

    /// <summary>A ball or an upright capsule, sunk into the ground or the sea so that it stands out by its height.</summary>
    private bool Rock(FieldTable t, Vec3 foot)
    {
        double diameter = t["diameter_m"], height = t["height_m"], tall = Math.Max(diameter, height + (diameter / 2));
        _solids.Add(new(SolidKind.Rock, SolidShape.Capsule, foot + ((_ground.GroundAt(foot.X, foot.Y) + (tall / 2) - height) * Vec3.UnitZ), new(diameter, diameter, tall), 0));
        return true;
    }

    private bool Refuse(FieldTable t, string key, string message, string hint)
    {
        bag.Error(t.PlaceOf(key), $"{t.Kind}.{key}", $"{t[key]:G6}", message, hint);
        return false;
    }
}
