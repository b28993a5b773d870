using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace Simfeel.Mutation;

/// <summary>Puts a note at the beginning of each member's body, so that it is known which tests run it.</summary>
internal sealed class MemberNotes(string file, List<(string File, int First, int Last)> members) : CSharpSyntaxRewriter
{
    public override SyntaxNode? VisitMethodDeclaration(MethodDeclarationSyntax node) => Noted(node);

    public override SyntaxNode? VisitOperatorDeclaration(OperatorDeclarationSyntax node) => Noted(node);

    public override SyntaxNode? VisitConversionOperatorDeclaration(ConversionOperatorDeclarationSyntax node) => Noted(node);

    public override SyntaxNode? VisitConstructorDeclaration(ConstructorDeclarationSyntax node) => Noted(node);

    public override SyntaxNode? VisitPropertyDeclaration(PropertyDeclarationSyntax node)
    {
        if (node.ExpressionBody is null) return base.VisitPropertyDeclaration(node);
        AccessorDeclarationSyntax get = SyntaxFactory.AccessorDeclaration(SyntaxKind.GetAccessorDeclaration, Body(node, null, node.ExpressionBody, true));
        return node.WithExpressionBody(null).WithSemicolonToken(default).WithAccessorList(SyntaxFactory.AccessorList([get]));
    }

    public override SyntaxNode? VisitAccessorDeclaration(AccessorDeclarationSyntax node) => node.Body is null && node.ExpressionBody is null
        ? node
        : node.WithBody(Body(node, node.Body, node.ExpressionBody, node.IsKind(SyntaxKind.GetAccessorDeclaration)))
            .WithExpressionBody(null).WithSemicolonToken(default);

    private BaseMethodDeclarationSyntax Noted(BaseMethodDeclarationSyntax node)
    {
        if (node.Body is null && node.ExpressionBody is null) return node;
        bool returns = node switch
        {
            ConstructorDeclarationSyntax => false,
            MethodDeclarationSyntax method => method.ReturnType.ToString() != "void" && !(method.Modifiers.Any(SyntaxKind.AsyncKeyword)),
            _ => true,
        };
        BlockSyntax body = Body(node, node.Body, node.ExpressionBody, returns);
        return node switch
        {
            MethodDeclarationSyntax m => m.WithBody(body).WithExpressionBody(null).WithSemicolonToken(default),
            OperatorDeclarationSyntax o => o.WithBody(body).WithExpressionBody(null).WithSemicolonToken(default),
            ConversionOperatorDeclarationSyntax c => c.WithBody(body).WithExpressionBody(null).WithSemicolonToken(default),
            ConstructorDeclarationSyntax k => k.WithBody(body).WithExpressionBody(null).WithSemicolonToken(default),
            _ => node,
        };
    }

    private BlockSyntax Body(SyntaxNode member, BlockSyntax? block, ArrowExpressionClauseSyntax? arrow, bool returns)
    {
        FileLinePositionSpan at = member.SyntaxTree.GetLineSpan(member.Span);
        members.Add((file, at.StartLinePosition.Line + 1, at.EndLinePosition.Line + 1));
        StatementSyntax note = SyntaxFactory.ParseStatement($"global::SimfeelMutation.Seen.Members[{members.Count - 1}] = true;\n");
        if (block is not null) return block.WithStatements(block.Statements.Insert(0, note));
        string text = arrow!.Expression is ThrowExpressionSyntax || !returns ? $"{arrow.Expression};" : $"return {arrow.Expression};";
        return SyntaxFactory.Block(note, SyntaxFactory.ParseStatement(text));
    }
}
