using System.Text;
using Simfeel.Flight.Tuning;
using Simfeel.Studies.Blind;

namespace Simfeel.Studies.Tests.Blind;

public sealed class VoteLogTests : IDisposable
{
    private static readonly DateTimeOffset Time = new(2026, 5, 1, 18, 30, 0, TimeSpan.FromHours(2));

    private readonly TempFolder _folder = new();

    private string LogPath => Path.Combine(_folder.Path, "deeper", VoteLog.UsualName);

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_session_is_read_back_as_it_was_flown()
    {
        BlindSession session = new(BlindTest.Triangle, 6, 2, 3);
        VoteLog log = new(LogPath);
        VoteSubject subject = Subject("Wagtail, \"long\"", "Möwe") with { Difference_Percent = 45.6 };
        while (!session.IsOver)
        {
            SessionTests.FlyAll(session);
            log.Append(session.Vote(2), subject, Time.AddSeconds(session.Voted));
        }
        VoteLogContent content = VoteLog.Read(LogPath);
        Assert.Empty(content.Remarks);
        Assert.Equal(session.Reveal(), content.Rows.Select(row => row.Vote));
        Assert.All(content.Rows, row => Assert.Equal(subject, row.Subject));
        Assert.Equal(Time.AddSeconds(8), content.Rows[^1].Date);
    }

    /// <summary>The file as RFC 4180 wants it: header, CRLF, quotes doubled, numbers with a point; and no column for a person.</summary>
    [Fact]
    public void The_file_is_plain_to_the_byte()
    {
        VoteLog log = new(LogPath);
        log.Append(Row(BlindTest.Triangle, "BAB", "2", true, Subject("Wag \"5\", red", "Line\nend") with { Difference_Percent = -12.5, VideoDelay_ms = 37.5 }));
        log.Append(Row(BlindTest.Pair, "AA", "different", true, Subject("a", "b") with { Metric = "", Difference_Percent = double.NaN }, control: true));
        Assert.Equal(
            "date,kind,trial,control,build_a,build_b,order,answer,right,metric,difference_percent,policy,video_delay_ms,version\r\n"
            + "2026-05-01T18:30:00+02:00,triangle,1,no,\"Wag \"\"5\"\", red\",Line end,BAB,2,yes,stop_time,-12.5,matched,37.5,0.1.0\r\n"
            + "2026-05-01T18:30:00+02:00,pair,1,yes,a,b,AA,different,yes,,,matched,0,0.1.0\r\n",
            Encoding.UTF8.GetString(File.ReadAllBytes(LogPath)));
    }

    /// <summary>A program may be killed at any byte. Whole lines are read, the torn one is remarked on, and the next session goes on behind it.</summary>
    [Fact]
    public void A_line_cut_at_any_byte_loses_no_other()
    {
        VoteLog log = new(LogPath);
        VoteSubject awkward = Subject("a \"quoted\", name", "Möwe");
        for (int n = 0; n < 3; n++) log.Append(Row(BlindTest.Triangle, "ABA", "2", true, awkward));
        byte[] whole = File.ReadAllBytes(LogPath);
        int fields = 0;
        for (int length = 0; length < whole.Length; length++)
        {
            File.WriteAllBytes(LogPath, whole[..length]);
            VoteLogContent torn = VoteLog.Read(LogPath);
            int lines = whole.AsSpan(0, length).Count((byte)'\n');
            // a line that lacks nothing but its end, or a part of the version behind the last comma, is as good as whole
            bool complete = torn.Rows.Count == lines && lines > 0;
            if (complete) fields++;
            Assert.Equal(complete ? lines : Math.Max(0, lines - 1), torn.Rows.Count);
            bool atEnd = length == 0 || whole[length - 1] == (byte)'\n';
            bool headerOnly = lines == 0 && length >= VoteRowFormat.Header.Length;
            Assert.Equal(atEnd || complete || headerOnly ? 0 : 1, torn.Remarks.Count);

            log.Append(Row(BlindTest.Pair, "AB", "same", false, awkward));
            VoteLogContent mended = VoteLog.Read(LogPath);
            Assert.Equal([.. torn.Rows.Select(row => row.Test), BlindTest.Pair], mended.Rows.Select(row => row.Test));
            Assert.Equal(lines == 0 ? 0 : torn.Remarks.Count, mended.Remarks.Count);
            Assert.All(mended.Remarks, remark => Assert.Equal(lines + 1, remark.Line));
            // nothing of the torn line is lost
            Assert.True(File.ReadAllBytes(LogPath).AsSpan().StartsWith(whole.AsSpan(0, length)));
        }
        // per line: before and within "0.1.0", and between CR and LF
        Assert.Equal(3 * 7, fields);
    }

    [Fact]
    public void Zeros_left_by_a_lost_supply_are_a_torn_line()
    {
        VoteLog log = new(LogPath);
        log.Append(Any);
        File.AppendAllText(LogPath, "2026\0\0\0\0");
        Assert.Equal(3, Assert.Single(VoteLog.Read(LogPath).Remarks).Line);
        log.Append(Any);
        Assert.Equal(2, VoteLog.Read(LogPath).Rows.Count);
    }

    [Fact]
    public void Several_writers_share_a_file()
    {
        const int Writers = 6, Each = 20;
        Parallel.For(0, Writers, new ParallelOptions { MaxDegreeOfParallelism = Writers }, writer =>
        {
            VoteLog log = new(LogPath);
            for (int n = 1; n <= Each; n++) log.Append(Row(BlindTest.Pair, "AB", "same", false, Subject($"build {writer}", "b"), trial: n));
        });
        VoteLogContent content = VoteLog.Read(LogPath);
        Assert.Empty(content.Remarks);
        Assert.Equal(Writers * Each, content.Rows.Count);
        foreach (IGrouping<string, VoteRow> writer in content.Rows.GroupBy(row => row.Subject.BuildA))
            Assert.Equal(Enumerable.Range(1, Each), writer.Select(row => row.Vote.Trial));
    }

    /// <summary>Whoever looks at the log while it is written sees whole lines.</summary>
    [Fact]
    public void A_log_may_be_read_while_it_grows()
    {
        VoteLog log = new(LogPath);
        for (int n = 1; n <= 3; n++)
        {
            log.Append(Row(BlindTest.Pair, "AB", "same", false, Subject("a", "b"), trial: n));
            using FileStream open = new(LogPath, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
            Assert.Equal(n, VoteLog.Read(LogPath).Rows.Count);
        }
    }

    [Fact]
    public void A_file_of_something_else_is_left_alone()
    {
        string other = _folder.File("notes.csv");
        foreach (string text in (string[])["date,notes\r\n", "notes", VoteRowFormat.Header + ",mood\r\n", VoteRowFormat.Header.ToUpperInvariant() + "\r\n"])
        {
            File.WriteAllText(other, text);
            Assert.Contains("no vote log", Refusal(() => new VoteLog(other).Append(Any)), StringComparison.Ordinal);
            Assert.Contains("first line must be date,", Refusal(() => VoteLog.Read(other)), StringComparison.Ordinal);
            Assert.Equal(text, File.ReadAllText(other));
        }
        Assert.Contains("no such file", Refusal(() => VoteLog.Read(_folder.File("none.csv"))), StringComparison.Ordinal);
        Assert.Contains("folder", Refusal(() => VoteLog.Read(_folder.Path)), StringComparison.Ordinal);
        Assert.Contains("cannot be stored", Refusal(() => new VoteLog(_folder.Path).Append(Any)), StringComparison.Ordinal);

        static string Refusal(Action action) => Assert.Throws<VoteLogException>(action).Message;
    }

    /// <summary>A spreadsheet may have stored the file with a byte order mark, line feeds alone, quotes everywhere and blank lines.</summary>
    [Fact]
    public void A_log_stored_by_a_spreadsheet_is_read()
    {
        string line = "\"2026-05-01T16:30:00Z\",\"triangle\",\"4\",\"no\",\"a\",\"b\",\"BBA\",\"3\",\"yes\",\"\",\"\",\"bare\",\"0\",\"\"";
        Directory.CreateDirectory(Path.GetDirectoryName(LogPath)!);
        File.WriteAllText(LogPath, $"\ufeff{VoteRowFormat.Header}\n\n{line}\n\n{line}");
        VoteLogContent content = VoteLog.Read(LogPath);
        Assert.Equal(2, content.Rows.Count);
        Assert.Equal(Time, content.Rows[1].Date);
        Assert.Equal(TuningPolicy.Bare, content.Rows[1].Subject.Policy);
        new VoteLog(LogPath).Append(content.Rows[0]);
        Assert.Equal(3, VoteLog.Read(LogPath).Rows.Count);
    }

    public static TheoryData<string, string, string> Mistakes => new()
    {
        { "2026-05-01T18:30:00+02:00", "yesterday", "votes.csv:2:1: error: date = yesterday: It must be a date and time such as 2026-05-01T18:30:00+02:00" },
        { "triangle", "square", ":2:27: error: kind = square: It must be triangle, pair." },
        { ",7,", ",0,", "trial = 0: It must be a whole number from 1 to 2000." },
        { ",no,", ",maybe,", "control = maybe: It must be yes or no." },
        { ",Wagtail,", ",,", "build_a = (nothing): It must be a name of 1 to 200 characters." },
        { ",ABA,", ",AAA,", "order = AAA: It must be an order of a triangle, such as ABA." },
        { ",ABA,", ",AB,", "order = AB: It must be an order of a triangle, such as ABA." },
        { ",no,", ",yes,", "order = ABA: It must be 3 times A or 3 times B, since it is a control." },
        { ",2,yes,", ",same,yes,", "answer = same: It must be 1, 2, 3." },
        { ",2,yes,", ",1,yes,", "right = yes: It must be no, as order and answer say." },
        { ",45.5,", ",\"45,5\",", "difference_percent = 45,5: It must be a number from -200 to 200 %, or nothing." },
        { ",45.5,", ",201,", "difference_percent = 201: It must be a number from -200 to 200 %, or nothing." },
        { ",45.5,", ",NaN,", "difference_percent = NaN: It must be a number from -200 to 200 %, or nothing." },
        { ",matched,", ",fair,", "policy = fair: It must be matched, same-gains, limit, bare." },
        { ",20,", ",301,", "video_delay_ms = 301: It must be a number from 0 to 300 ms." },
        { ",0.1.0", "", "votes.csv:2: error: The line has 13 fields; it must have 14." },
        { ",Wagtail,", ",\"Wagtail,", "votes.csv:2: error: A quote is opened and never closed." },
    };

    [Theory]
    [MemberData(nameof(Mistakes))]
    public void Mistakes_are_named_with_their_place(string good, string bad, string words)
    {
        const string Line = "2026-05-01T18:30:00+02:00,triangle,7,no,Wagtail,Curlew,ABA,2,yes,stop_time,45.5,matched,20,0.1.0";
        Assert.Contains(good, Line, StringComparison.Ordinal);
        Directory.CreateDirectory(Path.GetDirectoryName(LogPath)!);
        // the bad line stands between good ones, so it is none that was cut short, and twice, so all bad lines are named
        string mistake = Line.Replace(good, bad, StringComparison.Ordinal);
        File.WriteAllLines(LogPath, [VoteRowFormat.Header, mistake, Line, mistake, Line]);
        VoteLogException error = Assert.Throws<VoteLogException>(() => VoteLog.Read(LogPath));
        Assert.Equal([2, 4], error.Diagnostics.Select(diagnostic => diagnostic.Line!.Value));
        Assert.Contains(words, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_could_not_be_read_again_is_not_written()
    {
        VoteLog log = new(LogPath);
        foreach (VoteSubject subject in (VoteSubject[])
        [
            Subject("", "b"), Subject("a", new string('x', 201)), Subject("a", "b") with { Difference_Percent = 300 },
            Subject("a", "b") with { VideoDelay_ms = -1 }, Subject("a", "b") with { VideoDelay_ms = double.NaN },
        ])
            Assert.Throws<ArgumentException>(() => log.Append(Row(BlindTest.Pair, "AB", "same", false, subject)));
        Assert.False(File.Exists(LogPath));
    }

    private static VoteRow Any => Row(BlindTest.Pair, "AB", "same", false, Subject("a", "b"));

    private static VoteSubject Subject(string a, string b) => new(a, b, "stop_time", 20, TuningPolicy.Matched, 0, "0.1.0");

    private static VoteRow Row(BlindTest test, string order, string answer, bool right, VoteSubject subject, bool control = false, int trial = 1) =>
        new(Time, test, new(trial, control, order, answer, right), subject);
}
