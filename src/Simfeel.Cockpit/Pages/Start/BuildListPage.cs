using Simfeel.Cockpit.Drawing;
using Simfeel.Cockpit.Pages.Widgets;

namespace Simfeel.Cockpit.Pages.Start;

/// <summary>All builds with a line on each; one is picked.</summary>
internal sealed class BuildListPage(int index, StartModel model, Action<int> pick) : Page
{
    private protected override int FirstFocus => model.Picked[index];

    private protected override IReadOnlyList<Widget> Build() =>
    [
        new Label(index == 0 ? "Build A" : "Build B", TextStyle.Title),
        .. model.Builds.Select((build, k) => new Button(
            k == model.Picked[index] ? build.Name + "  (picked now)" : build.Name,
            () => Take(k),
            build.Description + "\n" + BuildPicker.Numbers(build))),
    ];

    private void Take(int build)
    {
        Stack?.Close();
        pick(build);
    }
}
