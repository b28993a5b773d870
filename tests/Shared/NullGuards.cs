using System.Reflection;
using System.Runtime.CompilerServices;

namespace Simfeel.Tests.Shared;

/// <summary>Calls every public method and constructor of an assembly with null for one parameter after the other.</summary>
internal static class NullGuards
{
    /// <summary>
    /// The parameters that refuse null by their own name, and those that do not, as <c>Type.Method(parameter)</c>, in order.
    /// What is annotated as nullable is left out, and so is what cannot be called without real objects before it.
    /// </summary>
    public static (IReadOnlyList<string> Guarded, IReadOnlyList<string> Others) Of(Assembly assembly)
    {
        SortedSet<string> guarded = new(StringComparer.Ordinal), others = new(StringComparer.Ordinal);
        NullabilityInfoContext annotations = new();
        foreach (Type type in assembly.GetExportedTypes().Where(t => !t.IsGenericTypeDefinition && !t.IsInterface && !typeof(Delegate).IsAssignableFrom(t)))
        {
            bool isRecord = type.GetMethod("<Clone>$") is not null;
            foreach (MethodBase method in type.GetMembers(BindingFlags.Public | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly).OfType<MethodBase>())
            {
                bool isConstructor = method is ConstructorInfo;
                if ((method.IsSpecialName && !isConstructor) || method.ContainsGenericParameters || method.GetCustomAttribute<CompilerGeneratedAttribute>() is not null) continue;
                if ((isRecord && isConstructor) || (type.IsAbstract && !method.IsStatic)) continue;
                foreach (ParameterInfo parameter in method.GetParameters().Where(p => !p.ParameterType.IsValueType && !p.ParameterType.IsByRef && !p.ParameterType.IsPointer))
                {
                    if (annotations.Create(parameter).WriteState != NullabilityState.NotNull || Names(method, parameter) is not { } named) continue;
                    (named == parameter.Name ? guarded : others).Add($"{type.Name}.{method.Name}({parameter.Name})");
                }
            }
        }
        return ([.. guarded], [.. others]);
    }

    /// <summary>The parameter that the exception names, "" for none; null where the method cannot be called.</summary>
    private static string? Names(MethodBase method, ParameterInfo isNull)
    {
        ParameterInfo[] parameters = method.GetParameters();
        object?[] values = new object?[parameters.Length];
        foreach (ParameterInfo parameter in parameters.Where(p => p != isNull))
        {
            values[parameter.Position] = Some(parameter.ParameterType);
            // guards stand in the parameters' order, so that what comes later may be null, too
            if (values[parameter.Position] is null && parameter.Position < isNull.Position) return null;
        }
        try
        {
            if (method is ConstructorInfo constructor) constructor.Invoke(values);
            else method.Invoke(method.IsStatic ? null : Some(method.DeclaringType!), values);
            return "";
        }
        catch (TargetInvocationException error)
        {
            return (error.InnerException as ArgumentNullException)?.ParamName ?? "";
        }
        catch (NotSupportedException)
        {
            // spans and the like cannot be handed over
            return null;
        }
    }

    /// <summary>An object that is not null, mostly without any content: no guard looks inside.</summary>
    private static object? Some(Type type)
    {
        if (type.IsByRef) type = type.GetElementType()!;
        // no file can have that name
        if (type == typeof(string)) return "/dev/null/x";
        if (type.IsValueType) return type.IsByRefLike ? null : Activator.CreateInstance(type);
        if (type.IsArray) return Array.CreateInstance(type.GetElementType()!, new int[type.GetArrayRank()]);
        if (type.IsInterface && type.IsGenericType && type.GetGenericArguments() is [Type item])
        {
            Array none = Array.CreateInstance(item, 0);
            return type.IsInstanceOfType(none) ? none : null;
        }
        if (type.IsAbstract || type.ContainsGenericParameters || typeof(Delegate).IsAssignableFrom(type)) return null;
        object some = RuntimeHelpers.GetUninitializedObject(type);
#pragma warning disable CA1816 // nothing was constructed, so there is nothing that its finalizer could give back
        GC.SuppressFinalize(some);
#pragma warning restore CA1816
        return some;
    }
}
