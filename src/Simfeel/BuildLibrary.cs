using Simfeel.Builds;
using Simfeel.Builds.Checks;
using Simfeel.Builds.Reading;
using Simfeel.Physics.Air;

namespace Simfeel.CommandLine;

/// <summary>Finds and assembles builds: a file, or the name of a starter build.</summary>
internal static class BuildLibrary
{
    /// <summary>Names of the starter builds.</summary>
    public static IReadOnlyList<string> StarterNames => BuildShelf.Starters.Names;

    /// <summary>Reads a build and puts it together in some air; warnings go to standard error.</summary>
    /// <exception cref="UserError">The build cannot be read or is wrong.</exception>
    public static AssembledBuild Load(string nameOrPath, AirState air)
    {
        BuildResult result = BuildReader.Read(PathOf(nameOrPath));
        // warnings stay in: a mistyped key is often why another one is missing
        if (result.Build is null) throw new UserError(result.Diagnostics);
        foreach (Diagnostic warning in result.Diagnostics) Console.Error.WriteLine(warning);
        return BuildAssembler.Assemble(result.Build, air);
    }

    /// <summary>Reads two builds and puts them together; where both are wrong, both are said; what is odd about the pair goes to standard error.</summary>
    /// <exception cref="UserError">A build cannot be read or is wrong.</exception>
    public static (AssembledBuild A, AssembledBuild B) LoadBoth(string a, string b, AirState air)
    {
        string[] names = [a, b];
        AssembledBuild?[] builds = new AssembledBuild?[2];
        UserError?[] errors = new UserError?[2];
        Parallel.For(0, 2, n =>
        {
            try
            {
                builds[n] = Load(names[n], air);
            }
            catch (UserError error)
            {
                errors[n] = error;
            }
        });
        if (UserError.Of(errors) is UserError both) throw both;
        if (PairChecks.SwallowedChange(builds[0]!.Build, builds[1]!.Build) is string swallowed) Console.Error.WriteLine("warning: " + swallowed);
        return (builds[0]!, builds[1]!);
    }

    /// <summary>Reads the propeller alone, of a build or of a file that holds nothing else; warnings go to standard error.</summary>
    /// <exception cref="UserError">The propeller cannot be read or is wrong.</exception>
    public static (string Name, PropellerSpec Propeller) LoadPropeller(string nameOrPath)
    {
        PropellerResult result = BuildReader.ReadPropeller(PathOf(nameOrPath));
        if (result.Propeller is null) throw new UserError(result.Diagnostics);
        foreach (Diagnostic warning in result.Diagnostics) Console.Error.WriteLine(warning);
        return (result.Name, result.Propeller);
    }

    /// <summary>The file of a build: the path itself, or that of the starter build of that name.</summary>
    /// <exception cref="UserError">There is neither.</exception>
    public static string PathOf(string nameOrPath) =>
        (nameOrPath.Length == 0 ? null : BuildShelf.Starters.PathOf(nameOrPath))
        ?? throw new UserError(
            $"There is no file and no starter build called '{nameOrPath}'.{NearestName.Choices(nameOrPath, "Starter builds", StarterNames)}.");
}
