namespace Simfeel.Cockpit.Application;

/// <content>The level grid: a plane that stays where it was switched on, to see drop and height lost against.</content>
public sealed partial class CockpitApp
{
    // height of the grid as the plates count it, m
    private double _gridHeight = double.NaN;

    /// <summary>Puts the grid to the flown craft's height, or takes it away.</summary>
    private void ToggleLevelGrid()
    {
        bool off = !double.IsNaN(_gridHeight);
        _gridHeight = off ? double.NaN : _readout.Builds[Outing!.Flown].Height;
        _painter.LevelGrid = off ? null : -Outing!.Stage.Session.State(Outing.Flown).p_WB.Z;
    }

    private void ForgetLevelGrid() => (_gridHeight, _painter.LevelGrid) = (double.NaN, null);

    private void FillLevelGrid(Outing outing)
    {
        _readout.GridHeight = _gridHeight;
        _readout.OverGrid = _painter.LevelGrid is double height ? -outing.Stage.Session.State(outing.Flown).p_WB.Z - height : 0;
    }
}
