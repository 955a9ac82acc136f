"""The whole path over HTTP: a block is written and sent, done in a cellar, and read at the desk."""

from tests.api.training import by_kind, done_sets, entries_of, finished, send, sheets
from tests.fixtures import athlete_data, block_data, fixture, kit_data
from tests.people import AtDesk, Clock, Phone, statuses

from undercroft.services.clock import DAY_MS


def test_a_sent_block_reaches_the_phone_as_sheets_for_its_own_kit(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    assert send(coach, block, ready)["sent"] == [{"athlete": ready, "revision": 1, "sessions": 6}]
    feed = device.reads_all()
    assert sorted(sheets(feed)) == ["w1-fri", "w1-mon", "w1-wed", "w2-fri", "w2-mon", "w2-wed"]
    assert by_kind(feed, "revision")["1"]["block_name"] == "First two weeks"
    assert by_kind(feed, "kit")[""]["name"] == "The old forge cellar"
    squat = by_kind(feed, "tracker")["back-squat"]
    assert squat["kg"] == 105
    assert squat["at"] == "2026-01-12T00:00:00.000Z"


def test_what_was_done_is_read_beside_what_was_planned_once(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    lines = [*entries_of(device, monday), finished(device, monday)]
    assert set(statuses(device.syncs(*lines))) == {"stored"}
    assert set(statuses(device.syncs(*lines))) == {"duplicate"}
    done = done_sets(coach, ready, "w1-mon")
    assert len(done) == 10
    assert all(one["kind"] == "done" for one in done)


def test_next_times_loads_move_when_a_session_closes(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    feed = sheets(device.reads_all())
    answer = device.syncs(*entries_of(device, feed["w1-mon"], extra_rir=2))
    assert sheets(answer["feed"]) == {}, "a session under way changes nothing yet"
    answer = device.syncs(finished(device, feed["w1-mon"]))
    moved = sheets(answer["feed"])
    squat = moved["w2-mon"]["exercises"][0]
    before = feed["w2-mon"]["exercises"][0]
    assert squat["sets"][0]["wish_kg"] > before["sets"][0]["wish_kg"]
    assert squat["maximum"]["kg"] > before["maximum"]["kg"]
    assert by_kind(answer["feed"], "tracker")["back-squat"]["kg"] > 105


def test_a_sheet_says_up_to_which_position_the_ledger_is_in_it(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    feed = sheets(device.reads_all())
    device.syncs(*entries_of(device, feed["w1-mon"]))
    answer = device.syncs(finished(device, feed["w1-mon"]))
    closing = answer["verdicts"][-1]["position"]
    assert sheets(answer["feed"])["w2-mon"]["through"] >= closing > feed["w2-mon"]["through"]


def test_a_session_that_was_never_finished_counts_once_the_next_one_begins(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    feed = sheets(device.reads_all())
    device.syncs(*entries_of(device, feed["w1-mon"], extra_rir=2))
    begun = device.writes.entry("session.started", {}, session="w1-wed", revision=1)
    assert by_kind(device.syncs(begun)["feed"], "tracker")["back-squat"]["kg"] > 105


def test_a_late_correction_works_the_trackers_out_again(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    lines = entries_of(device, monday, extra_rir=2)
    device.syncs(*lines, finished(device, monday))
    high = coach.get(f"/desk/athletes/{ready}").json["maxima"][0]
    corrections = [
        device.writes.corrected(line, rir=0) for line in lines if line["kind"] == "set.done"
    ]
    device.syncs(*corrections)
    low = coach.get(f"/desk/athletes/{ready}").json["maxima"][0]
    assert low["lift"] == high["lift"] == "back-squat"
    assert low["kg"] < high["kg"]


def test_the_trackers_do_not_depend_on_how_a_session_arrives(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    """In one request or one by one, the last one first: what is known is the same."""
    other = coach.adds_athlete("Runa's twin")
    for name, document in (("document", athlete_data()), ("kit", kit_data())):
        coach.post(f"/desk/athletes/{other}/{name}", {"document": document})
    phone = coach.pairs_phone(other)
    send(coach, block, ready, other)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday, extra_rir=1), finished(device, monday))
    for line in reversed([*entries_of(phone, monday, extra_rir=1), finished(phone, monday)]):
        phone.syncs(line)
    maxima = [coach.get(f"/desk/athletes/{one}").json["maxima"] for one in (ready, other)]
    assert maxima[0] == maxima[1]


def test_a_new_revision_leaves_a_session_that_was_begun_alone(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday)[:3])
    changed = block_data()
    for week in changed["weeks"]:
        for session in week["sessions"]:
            session["exercises"][0]["sets"].pop()
    del changed["weeks"][1]["sessions"][2]
    coach.post(f"/desk/blocks/{block}", {"document": changed})
    assert send(coach, block, ready)["sent"][0]["revision"] == 2
    feed = device.reads_all()
    assert sorted(sheets(feed)) == ["w1-fri", "w1-wed", "w2-mon", "w2-wed"]
    assert sorted(by_kind(feed, "sheet.withdrawn")) == ["w2-fri"]
    said = by_kind(feed, "revision")["2"]["changes"]
    assert "Week 1, Wednesday: hex bar deadlift 5 × 3 instead of 6 × 3" in said
    assert "Week 2, Friday: Press is gone" in said
    device.syncs(*entries_of(device, monday)[3:])
    assert all(one for one in done_sets(coach, ready, "w1-mon")[:2])


def test_an_athlete_without_a_maximum_gets_nothing_and_keeps_none_from_it(
    coach: AtDesk, ready: str, block: str
) -> None:
    bare = coach.adds_athlete("Nils Without")
    coach.post(f"/desk/athletes/{bare}/kit", {"document": kit_data()})
    answer = send(coach, block, bare, ready)
    assert [one["athlete"] for one in answer["sent"]] == [ready]
    (refused,) = answer["refused"]
    assert refused["athlete"] == bare
    assert "no maximum of 'back-squat' is known" in refused["stops"][0]["what"]


def test_a_stop_is_set_aside_in_writing_for_its_place_alone(
    coach: AtDesk, ready: str, block: str
) -> None:
    """Without safeties a heavy squat alone is a stop; a spotter is a reason to send it."""
    kit = kit_data()
    kit["supports"][0]["safeties"] = False
    coach.post(f"/desk/athletes/{ready}/kit", {"document": kit})
    (refused,) = send(coach, block, ready)["refused"]
    assert {stop["check"] for stop in refused["stops"]} == {"alone-without-safeties"}
    reasons = [
        {name: stop[name] for name in ("check", "path", "what")} | {"why": "her brother spots"}
        for stop in refused["stops"]
    ]
    body = {"athletes": [ready], "overrules": reasons[1:]}
    (still,) = coach.post(f"/desk/blocks/{block}/send", body).json["refused"]
    assert [stop["path"] for stop in still["stops"]] == [reasons[0]["path"]]
    body["overrules"] = reasons
    assert len(coach.post(f"/desk/blocks/{block}/send", body).json["sent"]) == 1


def test_findings_stand_beside_the_loads_with_their_place_and_mend(
    coach: AtDesk, ready: str
) -> None:
    document = block_data()
    document["weeks"][0]["sessions"][1]["exercises"][0]["rest"] = {"from_s": 30, "to_s": 40}
    found = coach.post("/desk/loads", {"athlete": ready, "document": document}).json["findings"]
    (rest,) = [one for one in found if one["check"] == "speed-rest"][:1]
    assert rest["path"].startswith("weeks.0.sessions.1.exercises.0")
    assert rest["severity"] == "warn"
    assert rest["right"]


def test_a_block_cannot_be_sent_to_somebody_elses_athlete(
    coach: AtDesk, block: str, other_athlete: str
) -> None:
    answer = coach.post(f"/desk/blocks/{block}/send", {"athletes": [other_athlete]})
    assert answer.status_code == 404


def test_a_draft_is_kept_with_its_faults_and_refused_only_when_sent(
    coach: AtDesk, ready: str
) -> None:
    draft = block_data()
    draft["weeks"][0]["sessions"][0]["exercises"][0]["sets"][0]["reps"] = 0
    saved = coach.post("/desk/blocks", {"document": draft}).json
    assert saved["faults"][0]["where"] == "week 1, Monday, exercise 1 (back-squat), set 1, reps"
    assert coach.get(f"/desk/blocks/{saved['id']}").json["document"] == draft
    answer = coach.post(f"/desk/blocks/{saved['id']}/send", {"athletes": [ready]})
    assert answer.status_code == 422
    assert answer.json["errors"][0]["path"].endswith("sets.0.reps")


def test_loads_beside_the_text_are_those_that_sending_makes(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    body = {"athlete": ready, "document": block_data()}
    beside = coach.post("/desk/loads", body).json["sheets"]
    send(coach, block, ready)
    sent = sheets(device.reads_all())
    for sheet in beside:
        mine = {**sent[sheet["session"]], "revision": 0, "through": 0}
        theirs = {"revision": 0, "through": 0, **sheet}
        assert mine == theirs


def test_a_new_kit_makes_new_sheets_for_sessions_not_begun(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    device.reads_all()
    boathouse = fixture("kits", "boathouse")
    coach.post(f"/desk/athletes/{ready}/kit", {"document": boathouse})
    squat = sheets(device.reads_all())["w1-mon"]["exercises"][0]
    assert squat["implement"]["name"] == "Light bar"


def test_a_kit_of_another_key_takes_the_old_ones_place_on_the_phone(
    coach: AtDesk, ready: str, device: Phone
) -> None:
    boathouse = fixture("kits", "boathouse")
    coach.post(f"/desk/athletes/{ready}/kit", {"document": boathouse})
    kits = [item["body"]["name"] for item in device.reads_all() if item["kind"] == "kit"]
    assert kits == [boathouse["name"]]


def test_a_tested_maximum_from_the_phone_moves_the_tracker(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    device.reads_all()
    test = device.writes.entry("max.tested", {"lift": "back-squat", "kg": 115}, revision=None)
    assert by_kind(device.syncs(test)["feed"], "tracker")["back-squat"]["kg"] > 107


def test_the_trend_has_the_test_and_the_sessions(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    points = coach.get(f"/desk/athletes/{ready}/maxima/back-squat").json["points"]
    assert [point["source"] for point in points] == ["test", "sets"]
    assert all(point["low_kg"] < point["kg"] < point["high_kg"] for point in points)


def test_silence_is_not_told_as_absence(coach: AtDesk, ready: str, block: str) -> None:
    send(coach, block, ready)
    states = {s["state"] for s in coach.get(f"/desk/athletes/{ready}/results").json["sessions"]}
    assert states == {"planned"}


def test_pain_comes_first_in_the_squad(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    coach.adds_athlete("Aada First-in-the-alphabet")
    send(coach, block, ready)
    device.syncs(device.writes.entry("pain.reported", {"where": "left knee", "level": 4}))
    first = coach.get("/desk/squad").json["athletes"][0]
    assert first["id"] == ready
    assert first["attention"][0] == {"level": "now", "text": "Pain 4 of 10: left knee"}


def test_the_squad_tells_how_far_a_block_has_come(
    coach: AtDesk, ready: str, block: str, device: Phone
) -> None:
    send(coach, block, ready)
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert line["states"]["sent_at"] is not None
    assert line["states"]["delivered_at"] is None
    monday = sheets(device.reads_all())["w1-mon"]
    device.syncs(*entries_of(device, monday), finished(device, monday))
    (line,) = coach.get("/desk/squad").json["athletes"]
    assert None not in [
        line["states"][name] for name in ("delivered_at", "started_at", "finished_at")
    ]
    assert line["next"]["session"] == "w1-wed"


def test_a_session_counts_as_missed_only_when_its_phone_was_heard_after_its_day(
    coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock
) -> None:
    send(coach, block, ready)
    device.reads_all()
    clock.passes(3 * DAY_MS)
    assert attention(coach) == []
    device.syncs(device.writes.entry("readiness", {"score": 4}))
    assert attention(coach) == ["Squat and press of Week 1 was missed"]


def test_what_was_planned_for_a_day_before_it_was_sent_was_not_missed(
    coach: AtDesk, ready: str, block: str, device: Phone, clock: Clock
) -> None:
    """What is sent on a Wednesday begins on the Monday before unless another is chosen."""
    clock.passes(2 * DAY_MS)
    send(coach, block, ready)
    device.reads_all()
    assert attention(coach) == []


def attention(coach: AtDesk) -> list[str]:
    (line,) = coach.get("/desk/squad").json["athletes"]
    return [one["text"] for one in line["attention"]]


def test_occlusion_work_is_not_sent_while_it_is_locked(coach: AtDesk, ready: str) -> None:
    document = block_data()
    curl = {
        "key": "curl",
        "exercise": "barbell-curl",
        "method": "occlusion",
        "details": {"limb": "upper-arm", "restriction": "wrap"},
        "sets": [{"key": "curl-1", "reps": 30, "load": {"basis": "kg", "kg": 22}}],
    }
    document["weeks"][0]["sessions"][0]["exercises"].append(curl)
    block = coach.post("/desk/blocks", {"document": document}).json["id"]
    (refused,) = send(coach, block, ready)["refused"]
    (lock,) = [stop for stop in refused["stops"] if stop["check"].startswith("occlusion")][:1]
    assert lock["path"].startswith("weeks.0.sessions.0.exercises.3")
    assert not lock["may_overrule"]
    aside = {name: lock[name] for name in ("check", "path", "what")}
    body = {"athletes": [ready], "overrules": [{**aside, "why": "he asked nicely"}]}
    assert coach.post(f"/desk/blocks/{block}/send", body).json["sent"] == []


def test_a_block_goes_out_as_it_came_in(coach: AtDesk, block: str) -> None:
    for form in ("csv", "json"):
        text = coach.get(f"/desk/blocks/{block}/export?format={form}").text
        read = coach.post("/desk/blocks/read", {"text": text, "format": form}).json["document"]
        assert read == block_data()


def test_a_text_that_is_no_block_is_refused_with_place_and_mend(coach: AtDesk) -> None:
    answer = coach.post(
        "/desk/blocks/read",
        {"text": "week,session,day,exercise,method,load,reps\nA,B,9,x,y,z,0\n", "format": "csv"},
    )
    assert answer.status_code == 422
    assert all(error["where"].startswith("line 2") for error in answer.json["errors"])
