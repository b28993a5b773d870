using Simfeel.Physics.Rotors;

namespace Simfeel.Benchmarks;

/// <summary>What the program does besides timing the kernel against its twin.</summary>
internal static class PrecisionCommands
{
    /// <summary>How long the quick rows of <see cref="Others"/> go on at least, s.</summary>
    private const double OthersTime = 30;

    /// <summary>Does what the arguments ask; false where they ask for something else.</summary>
    public static bool Run(string[] args)
    {
        bool write = args.Contains("--write");
        int export = Array.IndexOf(args, "--export");
        if (export >= 0)
        {
            if (export + 1 == args.Length)
            {
                Console.Error.WriteLine("--export needs a folder.");
                return true;
            }
            RotorTable table = Specimen.Table();
            ModelExport.Write(args[export + 1], table, [HeldManoeuvre.HardSecond, HeldManoeuvre.Controlled(table)]);
        }
        else if (args.Contains("--others"))
        {
            Finish(Others.Report(OthersTime), "others-" + Machine.FileName);
        }
        else if (args.Contains("--precision"))
        {
            string name = "work-precision-" + Machine.FileName, picture = Path.ChangeExtension(name, ".png");
            WorkPrecision.Result result = WorkPrecision.Make(picture);
            Finish(result.Markdown, name);
            File.WriteAllBytes(Path.Combine(Folder(), picture), result.Png);
        }
        else if (args.Contains("--steps"))
        {
            Finish(StepRates.Report(), "step-rates.md");
        }
        else
        {
            return false;
        }
        return true;

        void Finish(string report, string name)
        {
            Console.Write(report);
            File.WriteAllText(Path.Combine(Folder(), name), report);
            Console.Error.WriteLine($"Written to {Path.Combine(Folder(), name)}");
        }

        // what is not to be kept goes where builds go
        string Folder()
        {
            string root = TwinBuild.RepositoryRoot();
            return Directory.CreateDirectory(write ? Path.Combine(root, "benchmarks", "results") : Path.Combine(root, "artifacts", "results")).FullName;
        }
    }
}
