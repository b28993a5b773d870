using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Simfeel.Mutation;

/// <summary>
/// Finds what can be changed in a source file: operators, comparisons, conditions, signs, statements left out, and calls
/// that have a twin (minimum and maximum, sine and cosine, fused add and subtract). Left alone are constants, attributes,
/// patterns, the steps of for loops (they only make a loop endless) and everything inside a throw (an error's text).
/// </summary>
internal static class MutantFinder
{
    private static readonly Dictionary<SyntaxKind, (string From, string[] To)> Operators = new()
    {
        [SyntaxKind.AddExpression] = ("+", ["-"]),
        [SyntaxKind.SubtractExpression] = ("-", ["+"]),
        [SyntaxKind.MultiplyExpression] = ("*", ["/"]),
        [SyntaxKind.DivideExpression] = ("/", ["*"]),
        [SyntaxKind.ModuloExpression] = ("%", ["*"]),
        [SyntaxKind.LessThanExpression] = ("<", ["<=", ">="]),
        [SyntaxKind.LessThanOrEqualExpression] = ("<=", ["<", ">"]),
        [SyntaxKind.GreaterThanExpression] = (">", [">=", "<="]),
        [SyntaxKind.GreaterThanOrEqualExpression] = (">=", [">", "<"]),
        [SyntaxKind.EqualsExpression] = ("==", ["!="]),
        [SyntaxKind.NotEqualsExpression] = ("!=", ["=="]),
        [SyntaxKind.LogicalAndExpression] = ("&&", ["||"]),
        [SyntaxKind.LogicalOrExpression] = ("||", ["&&"]),
    };

    private static readonly Dictionary<SyntaxKind, string> Assignments = new()
    {
        [SyntaxKind.AddAssignmentExpression] = "-=",
        [SyntaxKind.SubtractAssignmentExpression] = "+=",
        [SyntaxKind.MultiplyAssignmentExpression] = "/=",
        [SyntaxKind.DivideAssignmentExpression] = "*=",
    };

    private static readonly Dictionary<string, string> Twins = new()
    {
        ["Min"] = "Max",
        ["Max"] = "Min",
        ["MinBy"] = "MaxBy",
        ["MaxBy"] = "MinBy",
        ["Sin"] = "Cos",
        ["Cos"] = "Sin",
        ["Floor"] = "Ceiling",
        ["Ceiling"] = "Floor",
        ["Fma"] = "Fms",
        ["Fms"] = "Fma",
        ["Fnma"] = "Fma",
        ["First"] = "Last",
        ["Last"] = "First",
        ["FirstOrDefault"] = "LastOrDefault",
        ["Any"] = "All",
        ["All"] = "Any",
        ["OrderBy"] = "OrderByDescending",
        ["OrderByDescending"] = "OrderBy",
        ["Skip"] = "Take",
        ["Take"] = "Skip",
        ["Sum"] = "Max",
        ["Average"] = "Max",
    };

    /// <summary>All mutants of a file, in the order of its text.</summary>
    public static List<Mutant> Find(string file, SyntaxTree tree)
    {
        List<Mutant> found = [];
        foreach (SyntaxNode node in tree.GetRoot().DescendantNodes(n => !IsLeftAlone(n)))
        {
            if (IsLeftAlone(node)) continue;
            foreach ((string text, bool statement) in Replacements(node)) found.Add(Make(file, tree, node, text, statement));
        }
        return found;
    }

    private static Mutant Make(string file, SyntaxTree tree, SyntaxNode node, string text, bool statement)
    {
        FileLinePositionSpan at = tree.GetLineSpan(node.Span);
        string change = $"{OneLine(node.ToString())} → {(text.Length == 0 ? "left out" : OneLine(text))}";
        return new(file, at.StartLinePosition.Line + 1, at.StartLinePosition.Character + 1, node.SpanStart, node.Span.End, text, statement, change);
    }

    private static string OneLine(string text)
    {
        string line = string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return line.Length <= 90 ? line : line[..60] + " … " + line[^25..];
    }

    private static bool IsLeftAlone(SyntaxNode node) => node switch
    {
        AttributeListSyntax or ThrowStatementSyntax or ThrowExpressionSyntax or PatternSyntax or CaseSwitchLabelSyntax => true,
        EnumMemberDeclarationSyntax or ParameterListSyntax => true,
        FieldDeclarationSyntax field => field.Modifiers.Any(SyntaxKind.ConstKeyword) || field.Modifiers.Any(SyntaxKind.FixedKeyword),
        LocalDeclarationStatementSyntax local => local.IsConst,
        _ => false,
    };

    private static IEnumerable<(string Text, bool Statement)> Replacements(SyntaxNode node)
    {
        switch (node)
        {
            case BinaryExpressionSyntax binary when Operators.TryGetValue(binary.Kind(), out (string From, string[] To) operators):
                if (operators.From is "&&" or "||" && Declares(binary)) break;
                foreach (string to in operators.To) yield return ($"{binary.Left} {to} {binary.Right}", false);
                break;
            case BinaryExpressionSyntax choice when choice.IsKind(SyntaxKind.CoalesceExpression) && choice.Right is not ThrowExpressionSyntax:
                yield return (choice.Right.ToString(), false);
                break;
            case PrefixUnaryExpressionSyntax { RawKind: (int)SyntaxKind.UnaryMinusExpression or (int)SyntaxKind.LogicalNotExpression } unary:
                yield return (unary.Operand.ToString(), false);
                break;
            case LiteralExpressionSyntax { RawKind: (int)SyntaxKind.TrueLiteralExpression }: yield return ("false", false); break;
            case LiteralExpressionSyntax { RawKind: (int)SyntaxKind.FalseLiteralExpression }: yield return ("true", false); break;
            case ConditionalExpressionSyntax choice when !IsComparison(choice.Condition) && !Declares(choice.Condition):
                yield return ($"{choice.Condition} ? {choice.WhenFalse} : {choice.WhenTrue}", false);
                break;
            case ExpressionSyntax condition when condition.Parent is IfStatementSyntax parent && parent.Condition == condition
                && !IsComparison(condition) && !Declares(condition) && condition is not PrefixUnaryExpressionSyntax:
                yield return ($"!({condition})", false);
                foreach (string text in Calls(condition as InvocationExpressionSyntax)) yield return (text, false);
                break;
            case InvocationExpressionSyntax call:
                foreach (string text in Calls(call)) yield return (text, false);
                break;
            case ExpressionStatementSyntax statement:
                if (statement.Expression is AssignmentExpressionSyntax assignment && Assignments.TryGetValue(assignment.Kind(), out string? other))
                {
                    yield return ($"{assignment.Left} {other} {assignment.Right};", true);
                }
                else
                {
                    yield return ("", true);
                }
                break;
        }
    }

    private static IEnumerable<string> Calls(InvocationExpressionSyntax? call)
    {
        if (call?.Expression is not MemberAccessExpressionSyntax access) yield break;
        SeparatedSyntaxList<ArgumentSyntax> arguments = call.ArgumentList.Arguments;
        string name = access.Name.Identifier.Text;
        if (Twins.TryGetValue(name, out string? twin)) yield return $"{access.Expression}.{twin}{call.ArgumentList}";
        else if (name is "Abs" or "Sqrt" && arguments.Count == 1) yield return $"{arguments[0]}";
        else if (name == "IfLess" && arguments.Count == 4) yield return $"{access}({arguments[0]}, {arguments[1]}, {arguments[3]}, {arguments[2]})";
        else if (name == "FusedMultiplyAdd" && arguments.Count == 3) yield return $"{access}({arguments[0]}, {arguments[1]}, -({arguments[2]}))";
    }

    // A variable born in a condition would be born twice.
    private static bool Declares(SyntaxNode node) =>
        node.DescendantNodesAndSelf().Any(n => n is VariableDesignationSyntax or DeclarationExpressionSyntax);

    private static bool IsComparison(ExpressionSyntax condition) => condition switch
    {
        ParenthesizedExpressionSyntax inside => IsComparison(inside.Expression),
        BinaryExpressionSyntax binary => Operators.ContainsKey(binary.Kind()),
        _ => false,
    };
}
