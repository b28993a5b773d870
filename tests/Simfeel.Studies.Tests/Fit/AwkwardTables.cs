using System.Text;

namespace Simfeel.Studies.Tests.Fit;

/// <summary>A table as people keep them, and what stands in it. All invented; the figures fit the starter build Wagtail.</summary>
/// <param name="Bytes">The file.</param>
/// <param name="Expected">Per quantity: SI value of its unit, and the figures row by row.</param>
/// <param name="Lines">Line of each row in the file.</param>
internal sealed record AwkwardTable(byte[] Bytes, Dictionary<string, (double Unit, double[] Figures)> Expected, int[] Lines)
{
    private const double GramForce = 9.80665e-3, Rpm = Math.PI / 30;

    private static readonly double[] Steps = [20, 40, 60, 80, 100];
    private static readonly double[] Gf = [107, 415, 853, 1353, 1856];
    private static readonly double[] Volts = [24.64, 24.53, 24.31, 23.97, 23.51];
    private static readonly double[] Amps = [0.7, 3.8, 10.5, 20.9, 34.9];
    private static readonly double[] Revs = [8164, 15444, 21619, 26700, 30773];

    /// <summary>The tables by a word for each.</summary>
    public static IReadOnlyDictionary<string, AwkwardTable> All { get; } = new Dictionary<string, AwkwardTable>
    {
        ["plain with byte order mark"] = new(
            [0xEF, 0xBB, 0xBF, .. Encoding.UTF8.GetBytes(
                """
                RPM,Current (A),Throttle (%),Thrust (g),Torque (N·m),Voltage (V),ESC temp (C)
                8164,0.70,20,107,0.0134,24.64,31
                15444,3.80,40,415,0.0466,24.53,31
                21619,10.50,60,853,0.0923,24.31,33
                26700,20.90,80,1353,0.1440,23.97,38
                30773,34.90,100,1856,0.1966,23.51,44
                """)],
            Full((1, [0.0134, 0.0466, 0.0923, 0.144, 0.1966])), [2, 3, 4, 5, 6]),

        ["German sheet in Latin-1 with decimal comma"] = new(
            Encoding.Latin1.GetBytes(
                "sep=;\r\nPrüfstand Möwe;;;;;\r\nGas [%];Schub [g];Drehmoment [mN·m];Spannung [V];Strom [A];Drehzahl [1/min]\r\n"
                + "20;107;13,4;24,64;0,7;8.164\r\n40;415;46,6;24,53;3,8;15.444\r\n60;853;92,3;24,31;10,5;21.619\r\n80;1.353;144;23,97;20,9;26.700\r\n100;1.856;196,6;23,51;34,9;30.773\r\n"),
            Full((1e-3, [13.4, 46.6, 92.3, 144, 196.6])), [4, 5, 6, 7, 8]),

        ["tabs in UTF-16 with a row of units"] = new(
            [0xFF, 0xFE, .. Encoding.Unicode.GetBytes(
                "Thrust stand log\n\nThrottle\tThrust\tTorque\tVoltage\tCurrent\tMotor speed\n%\tgf\tN cm\tV\tA\trpm\n\n"
                + "20\t107\t1.34\t24.64\t0.70\t8164\n40\t415\t4.66\t24.53\t3.80\t15444\n60\t853\t9.23\t24.31\t10.50\t21619\n80\t1353\t14.4\t23.97\t20.90\t26700\n100\t1856\t19.66\t23.51\t34.90\t30773\n")],
            Full((1e-2, [1.34, 4.66, 9.23, 14.4, 19.66])), [6, 7, 8, 9, 10]),

        ["merged titles over two rows"] = Text(
            """
            Test of 12 March;;;;;;
            ;Electrical;;Propeller;;;
            Throttle (%);Voltage (V);Current (A);Thrust (kgf);Torque (gf cm);rpm;remark
            20;24.64;0.7;0.107;136.6;8164;
            40;24.53;3.8;0.415;475.2;15444;ok
            60;24.31;10.5;0.853;941.2;21619;
            80;23.97;20.9;1.353;1468;26700;
            100;23.51;34.9;1.856;2005;30773;warm
            """,
            [4, 5, 6, 7, 8],
            ("throttle", 0.01, Steps), ("voltage", 1, Volts), ("current", 1, Amps), ("speed", Rpm, Revs),
            ("thrust", 9.80665, [0.107, 0.415, 0.853, 1.353, 1.856]), ("torque", 9.80665e-5, [136.6, 475.2, 941.2, 1468, 2005])),

        ["pulse width, newton, power, comments and blanks"] = Text(
            """
            # made with a home-built stand
            # speeds by an optical counter
            ESC signal (us);;Force [N];Input power [W];;Voltage [V];Speed [rpm];Time [s]

            1200;;1.049;17.2;;24.64;8164;3
            // it shook here
            1400;;4.070;93.2;;24.53;15444;7

            1600;;8.365;255.3;;24.31;21619;11
            1800;;13.268;501.0;;23.97;26700;15
            2000;;18.201;820.5;;23.51;30773;19
            """,
            [5, 7, 9, 10, 11],
            ("throttle", 0.01, Steps), ("thrust", 1, [1.049, 4.07, 8.365, 13.268, 18.201]), ("power", 1, [17.2, 93.2, 255.3, 501, 820.5]),
            ("voltage", 1, Volts), ("speed", Rpm, Revs)),

        ["electrical rpm with commas between thousands"] = Text(
            """
            Throttle %,eRPM,Thrust (ozf),Volts,Amps,Watts
            20,"57,148",3.774,24.64,0.70,17.2
            40,"108,108",14.64,24.53,3.80,93.2
            60,"151,333",30.09,24.31,10.50,255.3
            80,"186,900",47.73,23.97,20.90,501.0
            100,"215,411",65.47,23.51,34.90,820.5
            """,
            [2, 3, 4, 5, 6],
            ("throttle", 0.01, Steps), ("speed", Rpm / 7, [57148, 108108, 151333, 186900, 215411]), ("thrust", 0.45359237 * 9.80665 / 16, [3.774, 14.64, 30.09, 47.73, 65.47]),
            ("voltage", 1, Volts), ("current", 1, Amps), ("power", 1, [17.2, 93.2, 255.3, 501, 820.5])),

        ["mean and largest side by side, shares and pounds"] = Text(
            """
            Duty,Thrust [lbf],,Torque [in-lb],Current [A],,Voltage [V],Speed [rpm],
            ,mean,max,mean,mean,max,mean,mean,max
            0.2,0.236,0.31,0.119,0.7,1.1,24.64,8164,8300
            0.4,0.915,0.99,0.412,3.8,4.4,24.53,15444,15600
            0.6,1.881,1.95,0.817,10.5,11.6,24.31,21619,21800
            0.8,2.983,3.08,1.275,20.9,22.3,23.97,26700,26900
            1,4.092,4.20,1.740,34.9,36.6,23.51,30773,31000
            """,
            [3, 4, 5, 6, 7],
            ("throttle", 0.01, Steps), ("thrust", 4.4482216152605, [0.236, 0.915, 1.881, 2.983, 4.092]), ("torque", 4.4482216152605 * 0.0254, [0.119, 0.412, 0.817, 1.275, 1.74]),
            ("current", 1, Amps), ("voltage", 1, Volts), ("speed", Rpm, Revs)),

        ["French with blanks between thousands"] = Text(
            """
            Banc d'essai, hélice 5.1x4.3x3
            Gaz (%);Poussée (g);Couple (mN.m);Tension (V);Courant (A);Régime (tr/min);Rendement (g/W)
            20;107;13,4;24,64;0,7;8 164;6,2
            40;415;46,6;24,53;3,8;15 444;4,45
            60;853;92,3;24,31;10,5;21 619;3,34
            80;1 353;144;23,97;20,9;26 700;2,7
            100;1 856;196,6;23,51;34,9;30 773;2,26
            """.Replace("1 353", "1\u00a0353", StringComparison.Ordinal),
            [3, 4, 5, 6, 7],
            [.. Rest, ("torque", 1e-3, [13.4, 46.6, 92.3, 144, 196.6]), ("efficiency", GramForce, [6.2, 4.45, 3.34, 2.7, 2.26])]),

        ["blocks for several propellers with summaries"] = Text(
            """
            Motor test; three propellers
            6x4.5x3
            Throttle [%];Thrust [g];Voltage [V];Current [A];RPM
            40;560;24.4;6.1;13800
            100;2300;22.6;49.0;26100
            Average;1430;23.5;27.5;19950

            5.1x4.3x3
            Throttle [%];Thrust [g];Voltage [V];Current [A];RPM
            20;107;24.64;0.7;8164
            40;415;24.53;3.8;15444
            60;853;24.31;10.5;21619
            80;1353;23.97;20.9;26700
            100;1856;23.51;34.9;30773
            Average;917;24.19;14.2;20540
            Max;1856;24.64;34.9;30773
            """,
            [10, 11, 12, 13, 14], Rest),

        ["shop page with values written once"] = Text(
            """
            Prop,Volts(V),Throttle,Amps(A),Watts(W),"Thrust
            (g)",RPM,Efficiency(g/W),Operating Temperature(C)
            7x4x3,24.4,50%,12,293,900,13100,3.1,55
            ,,100%,60,1460,2900,21500,2,
            5.1x4.3x3,24.2,20%,0.7,17,107,8164,6.3,50
            ,,40%,3.8,92,415,15444,4.5,
            ,,60%,10.5,254,853,21619,3.4,
            ,,80%,20.9,506,1353,26700,2.7,
            ,,100%,34.9,845,1856,30773,2.2,
            """,
            [5, 6, 7, 8, 9],
            ("throttle", 0.01, Steps), ("thrust", GramForce, Gf), ("voltage", 1, [24.2, 24.2, 24.2, 24.2, 24.2]), ("current", 1, Amps), ("speed", Rpm, Revs),
            ("power", 1, [17, 92, 254, 506, 845]), ("efficiency", GramForce, [6.3, 4.5, 3.4, 2.7, 2.2])),

        ["Spanish with bars and without units"] = Text(
            """
            | Acelerador | Empuje | Par motor | Voltaje | Corriente | Velocidad | Temperatura |
            |  20 |  107 |  13.4 | 24.64 |  0.70 |  8164 | 30 |
            |  40 |  415 |  46.6 | 24.53 |  3.80 | 15444 | 31 |
            |  60 |  853 |  92.3 | 24.31 | 10.50 | 21619 | 35 |
            |  80 | 1353 | 144.0 | 23.97 | 20.90 | 26700 | 41 |
            | 100 | 1856 | 196.6 | 23.51 | 34.90 | 30773 | 49 |
            """,
            [2, 3, 4, 5, 6],
            [.. Rest, ("torque", 1e-3, [13.4, 46.6, 92.3, 144, 196.6])]),

        ["units in the cells and gaps in the rows"] = Text(
            """
            Throttle  Thrust  Torque  Pack voltage  Current  Rotation
            20 %  107 g  13.4 mNm  24.64 V  700 mA  8'164 rpm
            40 %  415 g  46.6 mNm  24.53 V  3.8 A  15'444 rpm
            60 %  853 g  n/a  24.31 V  10.5 A  21'619 rpm
            80 %  1.353 kg  144 mNm  23.97 V  20.9 A  26'700 rpm
            100 %  1.856 kg  196.6 mNm  23.51 V  34.9 A  30'773 rpm
            """,
            [2, 3, 4, 5, 6],
            [.. Rest, ("torque", 1e-3, [13.4, 46.6, double.NaN, 144, 196.6])]),
    };

    private static (string, double, double[])[] Rest =>
        [("throttle", 0.01, Steps), ("thrust", GramForce, Gf), ("voltage", 1, Volts), ("current", 1, Amps), ("speed", Rpm, Revs)];

    private static Dictionary<string, (double, double[])> Full((double, double[]) torque) =>
        new(Rest.Select(r => KeyValuePair.Create(r.Item1, (r.Item2, r.Item3)))) { ["torque"] = torque };

    private static AwkwardTable Text(string text, int[] lines, params (string Quantity, double Unit, double[] Figures)[] expected) =>
        new(Encoding.UTF8.GetBytes(text), expected.ToDictionary(e => e.Quantity, e => (e.Unit, e.Figures)), lines);
}
