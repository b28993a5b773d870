using Spectre.Console;

namespace Simfeel.Fuzz.Targets;

/// <summary>Runs something that prints, and keeps what it prints.</summary>
internal static class Captured
{
    // the parser's library keeps the writer that it met first
    private static readonly StringWriter Output = new(), Errors = new();

    private static readonly IAnsiConsole Plain =
        AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Output), Ansi = AnsiSupport.No, Interactive = InteractionSupport.No });

    /// <summary>Exit code, and what went to standard output and to standard error.</summary>
    public static (int Code, string Said, string Complained) Run(Func<int> run)
    {
        (TextWriter said, TextWriter complained, TextReader asked, IAnsiConsole console) = (Console.Out, Console.Error, Console.In, AnsiConsole.Console);
        try
        {
            Console.SetOut(Output);
            Console.SetError(Errors);
            Console.SetIn(TextReader.Null);
            AnsiConsole.Console = Plain;
            int code = run();
            return (code, Output.ToString(), Errors.ToString());
        }
        finally
        {
            Output.GetStringBuilder().Clear();
            Errors.GetStringBuilder().Clear();
            Console.SetOut(said);
            Console.SetError(complained);
            Console.SetIn(asked);
            AnsiConsole.Console = console;
        }
    }
}
