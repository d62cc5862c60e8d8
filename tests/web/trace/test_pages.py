"""Tracing as pages: bags are ticked and written, a lot's list is called from, records put right."""

import html
import re

from starlette.testclient import TestClient

from krume.web.frame.forms import Form
from krume.web.trace.boxes import said_of_each

COVERS = ("bagging", "boxes", "records")


def form_of(text: str, start: str) -> dict[str, str]:
    """What the form after some words would send as it stands."""
    form = text[text.index(start) :]
    form = form[: form.index("</form>")]
    values = {}
    for found in re.findall(r"<input[^>]*>", form):
        said = dict(re.findall(r'([\w-]+)="([^"]*)"', found))
        if said.get("type") != "checkbox" or " checked" in found:
            values[said["name"]] = html.unescape(said.get("value", ""))
    for name, inside in re.findall(r'<select[^>]*name="([^"]+)"[^>]*>(.*?)</select>', form, re.S):
        chosen = re.search(r'<option(?: value="([^"]*)")? selected>([^<]*)', inside)
        first = re.search(r'<option(?: value="([^"]*)")?>([^<]*)', inside)
        used = chosen or first
        assert used is not None
        values[name] = used[1] or used[2]
    return values


def _write(client: TestClient, name: str = "101", **more: str) -> None:
    form = form_of(client.get(f"/trace/of/{name}").text, '<form class="block"')
    answer = client.post(f"/trace/of/{name}", data={**form, **more}, follow_redirects=False)
    assert (answer.status_code, answer.headers["location"]) == (303, f"/trace/of/{name}")


def test_the_only_bag_of_the_house_is_ticked_and_writing_it_down_gives_a_code(
    own: TestClient,
) -> None:
    page = own.get("/trace/of/101").text
    assert 'value="L-008" checked' in page
    assert "no lot in the house" in page
    _write(own)
    after = own.get("/trace/of/101").text
    assert "/trace/cakes/L270610-1" in after
    assert "Everything of it is written down" in after


def test_sent_twice_is_written_once(own: TestClient) -> None:
    form = form_of(own.get("/trace/of/T1").text, '<form class="block"')
    for _ in range(2):
        own.post("/trace/of/T1", data=form)
    assert "L270610-2" not in own.get("/trace/of/T1").text


def test_another_mark_an_earlier_batch_and_not_known_are_kept(own: TestClient) -> None:
    _write(own, "T1")
    form = form_of(own.get("/trace/of/101").text, '<form class="block"')
    eggs = next(k for k, v in form.items() if k.endswith(".of") and v == "eggs")
    form[eggs.removesuffix("of") + "other"] = "0DE1 <b>"
    more = {"batch1": "B270610-2", "batch3": "not known", "day0": "2027-06-08"}
    _write(own, "101", **{**form, **more})
    cake = own.get("/trace/cakes/L270610-2").text
    assert "0DE1 &lt;b&gt;" in cake
    assert "B270608-1" in cake
    assert "/trace/batches/B270610-2" in cake
    assert "batch not known" in cake


def test_what_cannot_be_is_said_and_what_was_typed_is_kept(own: TestClient) -> None:
    form = form_of(own.get("/trace/of/101").text, '<form class="block"')
    wrong = own.post("/trace/of/101", data={**form, "made": "soon"})
    assert wrong.status_code == 422
    assert 'id="wrong-made"' in wrong.text
    assert 'value="soon"' in wrong.text
    late = own.post("/trace/of/101", data={**form, "made": "2027-06-11"})
    assert late.status_code == 422
    assert "still to come" in late.text
    assert "L270610-1" not in own.get("/trace").text


def test_the_page_of_a_lot_says_whom_to_call_and_has_its_list(own: TestClient) -> None:
    _write(own)
    page = own.get("/trace/lot", params={"mark": "l-008"}).text
    assert (
        page.index("L-008 is in 1 making.") < page.index("M. Tarrow") < page.index("Your local law")
    )
    for ending, kind in (("pdf", "application/pdf"), ("csv", "text/csv; charset=utf-8")):
        answer = own.get(f"/trace/lot/list.{ending}", params={"mark": "L-008"})
        assert answer.headers["content-type"] == kind
    assert own.get("/trace/lot/list.exe", params={"mark": "L-008"}).status_code == 404
    assert own.get("/trace/cakes/L270610-1/list.csv").text.startswith("\ufefflot_code")


def test_a_name_is_looked_up_or_asked_back(own: TestClient) -> None:
    _write(own)
    places = {"L-008": "/trace/lot?mark=L-008", "l270610-1": "/trace/cakes/L270610-1",
              "B270610-1": "/trace/batches/B270610-1", "101": "/trace/of/101"}  # fmt: skip
    for name, place in places.items():
        found = own.get("/trace", params={"name": name}, follow_redirects=False)
        assert found.headers["location"] == place
    asked = own.get("/trace", params={"name": "L-08"}).text
    assert "/trace?name=lot+L-008" in asked
    assert 'name="ingredient"' in asked
    told = own.get("/trace", params={"name": "7781", "ingredient": "butter"})
    assert "not ruled out" in told.text
    assert "7781" in told.text


def test_a_batch_is_put_right_and_an_older_page_is_a_conflict(own: TestClient) -> None:
    _write(own)
    form = form_of(own.get("/trace/batches/B270610-1").text, 'action="/trace/batches/')
    eggs = next(k for k, v in form.items() if k.endswith(".of") and v == "eggs")
    form[eggs.removesuffix("of") + "other"] = "E-7"
    form["reason"] = "the other box"
    done = own.post("/trace/batches/B270610-1", data=form, follow_redirects=False)
    assert done.status_code == 303
    page = own.get("/trace/batches/B270610-1").text
    assert "Written down 2 times" in page
    assert "the other box" in page
    stale = own.post("/trace/batches/B270610-1", data={**form, "reason": "again"})
    assert stale.status_code == 409
    assert "corrected since" in stale.text


def test_a_cake_is_put_right_or_taken_back(own: TestClient) -> None:
    _write(own)
    form = form_of(own.get("/trace/cakes/L270610-1").text, 'action="/trace/cakes/')
    assert form["part0"] == "B270610-1"
    own.post("/trace/cakes/L270610-1", data={**form, "part0": "?"})
    assert "which batch of F1 went in is not known" in own.get("/trace/cakes/L270610-1").text
    stale = own.post("/trace/cakes/L270610-1", data={**form, "part0": "?"})
    assert stale.status_code == 409
    form = form_of(own.get("/trace/cakes/L270610-1").text, 'action="/trace/cakes/')
    own.post("/trace/cakes/L270610-1", data={**form, "void": "yes"})
    assert "it was never made" in own.get("/trace/cakes/L270610-1").text


def test_the_bags_of_a_bake_are_asked_from_its_own_page(own: TestClient) -> None:
    ended = {"key": "weighing of F2", "trial": "ended", "centre": "48", "word": "good"}
    own.post("/bench/F2/end", data=ended)
    assert "/trace/trials/ended" in own.get("/trials/ended").text
    page = own.get("/trace/trials/ended").text
    form = form_of(page, '<form class="block"')
    done = own.post("/trace/trials/ended", data=form, follow_redirects=False)
    assert done.headers["location"] == "/trace/batches/B270610-1"
    assert "/trials/ended" in own.get("/trace/batches/B270610-1").text
    wrong = own.post("/trace/trials/ended", data={**form, "day0": "x"})
    assert wrong.status_code == 422


def test_an_empty_book_says_what_to_do_next_and_unknown_names_are_no_page(
    bare: TestClient, client: TestClient
) -> None:
    assert "krume book init" in bare.get("/trace").text
    unknown = ("of/none", "cakes/none", "batches/none", "lot?mark=none", "lot/list.pdf")
    for address in (f"/trace/{each}" for each in (*unknown, "trials/none")):
        assert client.get(address).status_code == 404, address
    assert client.get("/trace/lot", follow_redirects=False).headers["location"] == "/trace"


def test_a_form_is_read_line_by_line() -> None:
    values = {"of0": "F1", "day0": "2027-06-09", "batch0": "new", "lot0.0.of": "eggs",
              "lot0.0.0": "E-1", "lot0.0.other": "E-2, E-1", "lot0.1.of": "salt",
              "of1": "C1", "batch1": "not known", "of2": "S1", "batch2": "B270609-1"}  # fmt: skip
    said, form = said_of_each(Form(values))
    assert form.wrong == {}
    assert said["F1"].lots == {"eggs": ("E-1", "E-2"), "salt": ()}
    assert said["C1"].is_unknown
    assert said["S1"].batch == "B270609-1"
