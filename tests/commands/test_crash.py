from elevation.commands import crash, main


def test_a_bug_leaves_a_report_once_and_exit_70(monkeypatch, capsys):
    def breaks(_words):
        raise RuntimeError("a plank fell down")

    monkeypatch.setattr(main.arguments, "read", breaks)
    assert main.main([]) == 70
    told = capsys.readouterr().err
    assert "Traceback" not in told
    report = crash.take_unread()
    assert report is not None
    assert str(report) in told
    assert "a plank fell down" in report.read_text(encoding="utf-8")
    assert crash.take_unread() is None, "it is told once"
