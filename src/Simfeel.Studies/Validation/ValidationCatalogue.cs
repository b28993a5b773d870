using System.Collections.Immutable;

namespace Simfeel.Studies.Validation;

/// <summary>Every case in which the rotor model stands beside published numbers.</summary>
public static class ValidationCatalogue
{
    /// <summary>The cases, from theory to small propellers.</summary>
    public static ImmutableArray<ValidationCase> All { get; } =
    [
        new MomentumTheoryCase(),
        new VortexRingCase(),
        new CastlesGrayHoverCase(),
        new ClosedFormBladeCase(),
        new KnightHefnerCase(),
        new CaradonnaTungCase(),
        new Da4002Case(),
        new Da4022Case(),
        new SmallPropellersCase(),
        new DefaultSectionLiftCase(),
        new DefaultSectionDragCase(),
        new GroundEffectCase(),
        new BoundsCase(),
    ];
}
