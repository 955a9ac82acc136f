"""What is read together is of one moment, whatever is written meanwhile."""

from threading import Thread

from tests.people import AtDesk

from undercroft.store import athletes, database


def names(athlete: str) -> str:
    return str(athletes.athlete_with_coach(athlete).name)


def rename(athlete: str) -> None:
    database.connect()
    with database.writing():
        database.database.execute_sql("UPDATE athlete SET name = 'Ingmar Solheim'")
    database.disconnect()


def test_a_page_that_was_begun_shows_the_state_it_began_with(coach: AtDesk, athlete: str) -> None:
    database.connect()
    with database.reading():
        before = names(athlete)
        writer = Thread(target=rename, args=(athlete,))
        writer.start()
        writer.join()
        assert names(athlete) == before != "Ingmar Solheim"
    assert names(athlete) == "Ingmar Solheim"
