using Simfeel.Cockpit.Platform;
using Simfeel.Cockpit.Sound;
using Simfeel.Flight;
using Simfeel.Physics;

namespace Simfeel.Cockpit.Application;

/// <content>What a flight shows and lets hear: overlay, sound, pictures.</content>
public sealed partial class CockpitApp
{
    private void TakePicture()
    {
        if (!UserFolder.TryNewFile(_options.PictureFolder, "picture", ".png", DateTime.Now, out string file, out string problem))
        {
            Notify(problem);
            return;
        }
        try
        {
            WritePng(file, overwrite: false);
            Notify($"Stored as {file}");
        }
        catch (IOException) when (File.Exists(file))
        {
            // another window took the name in the same second
            TakePicture();
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            Notify($"The picture cannot be stored: {error.Message}");
        }
    }

    private void Fill(Outing outing)
    {
        FlightSession session = outing.Stage.Session;
        int flown = outing.Flown;
        for (int craft = 0; craft < 2; craft++)
        {
            Sample sample = session.Sample(craft);
            outing.SetThrust(craft, sample);
            outing.Fill(_readout.Builds[craft], craft, sample);
        }
        CraftCondition condition = session.Condition(flown);
        _readout.Flown = flown;
        _readout.Time = session.Time;
        _readout.Sticks = outing.Stage.Last.Sticks;
        _readout.Armed = condition.Armed;
        // what a key would mend in a live flight is not said of a recording
        _readout.Crashed = condition.Crashed && _tape is null;
        _readout.Shadow = session.Shadow;
        _readout.Paused = outing.Stage.Paused;
        _readout.TimeFactor = outing.Stage.Speed;
        _readout.Recording = outing.Stage.Recorder is not null;
        _readout.Replaying = _tape is not null;
        _readout.Blind = Blind.IsOn;
        _readout.Keyboard = Pilot.OnKeyboard && !_readout.Replaying;
        _readout.NoStick = _lost;
        _readout.Level = outing.Stage.Last.Has(PilotSwitches.Level);
        _readout.PictureDelay = _delays[flown].Delays.Last_s;
        FillCoach(outing);
        _painter.Overlay.Graphs.Record(_readout);
    }

    private void Sound(Outing outing)
    {
        Sample sample = outing.Stage.Present;
        Craft craft = outing.Build(outing.Flown).Unit.Unit.Craft;
        SoundMoment moment = new()
        {
            RotorCount = craft.Rotors.Count,
            Blades = outing.Assembled(outing.Flown).Build.Propeller.Blades.Count,
            Radius = craft.Rotors[0].Radius,
            Speeds = sample.State.RotorSpeeds,
            Thrusts = sample.Thrust,
            AirSpeed = sample.AirVelocity_B.Length,
            Impact = outing.Stage.Impact,
        };
        outing.Stage.Impact = 0;
        _sound.IsMuted = outing.Stage.Paused || Blind.IsOn;
        _speaker?.Feed(_sound, moment);
    }
}
