using System.Runtime.Intrinsics;
using Simfeel.Physics.Air;
using Simfeel.Physics.Lanes;

namespace Simfeel.Physics.Rotors;

/// <summary>
/// Tables of a propeller's loads over every working state. Solves the equations of <see cref="BladeElementSolver"/> with
/// <see cref="BladeElementOptions.Default"/> at the nodes of <see cref="RotorTableGrid"/>, with the section polar tabulated
/// first (<see cref="PolarRows"/>). The bits do not depend on the number of threads.
/// </summary>
public static unsafe class RotorTableBuilder
{
    private const int AngleNodes = RotorTableGrid.AngleCells + 1;
    private const int InPlaneNodes = RotorTableGrid.InPlaneCells + 1;

    // neighbouring angles, solved side by side
    private const int Abreast = 4;

    private const int SpeedNodes = RotorTableGrid.SpeedCells + 1;

    /// <summary>The table of a propeller in still air of one state.</summary>
    /// <param name="geometry">The propeller.</param>
    /// <param name="air">Density and viscosity set Reynolds numbers, sound speed sets Mach numbers.</param>
    /// <param name="threads">Most threads to use; 0 for as many as there are processors.</param>
    /// <exception cref="ArgumentException">The air or the polar gives a number that is not finite.</exception>
    public static RotorTable Build(RotorGeometry geometry, AirState air, int threads = 0)
    {
        ArgumentNullException.ThrowIfNull(geometry);
        if (!(air.Density > 0 && air.Viscosity > 0 && air.SoundSpeed > 0))
            throw new ArgumentException($"Density, viscosity and sound speed of the air must be positive: {air}.", nameof(air));
        var parallel = new ParallelOptions { MaxDegreeOfParallelism = threads > 0 ? threads : Environment.ProcessorCount };
        BladeElementOptions options = BladeElementOptions.Default;
        RotorAnnulus[] annuli = RotorAnnulus.Divide(geometry, options.Annuli, options.EqualAnnuli);
        double slowest = 0.1 * RotorTableGrid.SpeedAt(0), fastest = RotorTableGrid.SpeedAt(RotorTableGrid.SpeedCells);
        var rows = new PolarRows(geometry.Polar, annuli, geometry.Radius, air, slowest, fastest, parallel);
        double[] tipLoss = TipLossTables(annuli);
        double[] sines = new double[options.Azimuths], cosines = new double[options.Azimuths];
        for (int i = 0; i < options.Azimuths; i++)
            (sines[i], cosines[i]) = Math.SinCos(BladeElementSolver.Azimuth(i, options.Azimuths));

        double[] nodes = new double[RotorTable.NodeCount];
        Parallel.For(0, InPlaneNodes * SpeedNodes, parallel, line => Line(line % InPlaneNodes, line / InPlaneNodes));
        return new RotorTable(nodes);

        void Line(int j, int k)
        {
            double speed = RotorTableGrid.SpeedAt(k);
            Span<RotorSum> sums = stackalloc RotorSum[AngleNodes];
            double** row = stackalloc double*[Abreast];
            double* share = stackalloc double[Abreast], friction = stackalloc double[Abreast];
            double* rotation = stackalloc double[Abreast], axial = stackalloc double[Abreast], inPlane = stackalloc double[Abreast];
            Span<AnnulusForces> forces = stackalloc AnnulusForces[Abreast];
            fixed (double* sine = sines, cosine = cosines, loss = tipLoss, polar = rows.Numbers)
            {
                for (int a = 0; a < annuli.Length; a++)
                {
                    (double, double) twist = Math.SinCos(annuli[a].Twist);
                    for (int first = 0; first < AngleNodes; first += Abreast)
                    {
                        for (int n = 0; n < Abreast; n++)
                        {
                            // beyond the last node it is solved once more
                            FlowDirection flow = Direction(Math.Min(first + n, AngleNodes - 1), j);
                            (rotation[n], axial[n], inPlane[n]) = (flow.Rotation, flow.Axial, flow.InPlane);
                            (int start, share[n], friction[n]) = rows.Between(a, speed * flow.SectionSpeed(annuli[a].Radius));
                            row[n] = polar + start;
                        }
                        var blades = new RowBlades(
                            annuli[a], twist, row, share, Vector256.Load(friction), loss + (a * (RowBlades.TipLossSteps + 1)), sine, cosine, sines.Length);
                        FlowLanes<Lane4> flows = new(Lane(rotation), Lane(axial), Lane(inPlane));
                        Lane4 induced = InflowSolver<Lane4>.InducedVelocity(blades, flows);
                        blades.Forces(InflowSolver<Lane4>.Flow(blades, flows, induced, out _), forces);
                        for (int n = 0; n < Abreast && first + n < AngleNodes; n++) sums[first + n].Add(annuli[a], forces[n], induced.v[n]);
                    }
                }
            }
            for (int i = 0; i < AngleNodes; i++)
            {
                RotorCoefficients c = sums[i].Coefficients(Direction(i, j));
                int at = RotorTable.NodeOffset(i, j, k);
                nodes[at] = c.Thrust;
                nodes[at + 1] = c.Torque;
                nodes[at + 2] = c.InPlane;
                nodes[at + 3] = c.Pitch;
            }
        }
    }

    private static Lane4 Lane(double* numbers)
    {
        Lane4 r;
        r.v = Vector256.Load(numbers);
        return r;
    }

    private static FlowDirection Direction(int i, int j)
    {
        (double rotation, double axial, double inPlane) = RotorTableGrid.DirectionAt(i, j);
        return new(rotation, axial, Math.Max(inPlane, BladeElementSolver.LeastInPlane));
    }

    private static double[] TipLossTables(RotorAnnulus[] annuli)
    {
        double[] tables = new double[annuli.Length * (RowBlades.TipLossSteps + 1)];
        for (int i = 0; i < tables.Length; i++)
        {
            int step = i % (RowBlades.TipLossSteps + 1);
            tables[i] = annuli[i / (RowBlades.TipLossSteps + 1)].TipLoss((double)step / RowBlades.TipLossSteps);
        }
        return tables;
    }
}
