package withers.demo;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import withers.demo.Truth.Told;

/**
 * What befalls a few animals on top of the rest: one is lost, one turns up at a shelter, a card of
 * another has its number. Shares are our judgement.
 */
final class TrueTurn {

  private static final LocalDate LAST_DAY = Round.last().asOf().minusDays(2);
  private static final LocalDate MAY = LocalDate.of(2026, 5, 5);

  /** When what ended was typed: never, or on a day. */
  private record End(LocalDate day, Optional<LocalDate> typed) {}

  private final Life life;
  private final Animal animal;
  private final Truth truth;
  private final Dice dice;

  TrueTurn(long seed, Life life, Animal animal, Truth truth) {
    this.life = life;
    this.animal = animal;
    this.truth = truth;
    this.dice = Dice.of(seed, "turn", life.number);
  }

  void live() {
    int turn = dice.below(1000);
    LocalDate day = dice.day(MAY, LAST_DAY.minusDays(3));
    truth.keeperSince(day).ifPresent(keeper -> live(turn, day, keeper));
  }

  private void live(int turn, LocalDate day, Person keeper) {
    if (turn < 25) {
      lost(day, keeper);
    } else if (turn < 40) {
      strayed(day, keeper);
    } else if (turn < 50) {
      seen(day);
    } else if (turn < 58) {
      numberTypedForAnother(day, keeper);
    } else if (turn == 58) {
      kindMistyped(day, keeper);
    }
  }

  /** Most are back within days; some people forget to say so, or say so weeks later. */
  private Optional<End> end(LocalDate day) {
    int turn = dice.below(100);
    LocalDate back = dice.after(day, 0, 12);
    if (turn >= 75 || back.isAfter(LAST_DAY)) {
      return Optional.empty();
    }
    LocalDate typed = turn < 60 ? back : dice.after(back, 15, 50);
    return Optional.of(new End(back, Optional.of(typed).filter(t -> turn < 67)));
  }

  private void lost(LocalDate day, Person keeper) {
    Person reporter = dice.permille(700) ? keeper : life.partner(keeper);
    Ledger.Entry report = report(day, "lost", "", reporter);
    truth.lost(day, new Told(Source.LOST_AND_FOUND, day));
    end(day).ifPresent(end -> over(end, report));
  }

  private void seen(LocalDate day) {
    Shelter holder = Shelter.GARROWNESS;
    Ledger.Entry report = report(day, "found", holder.organisation(), Person.NOBODY);
    truth.found(day, holder.contact(), new Told(Source.LOST_AND_FOUND, day));
    end(day).ifPresent(end -> over(end, report));
  }

  private Ledger.Entry report(LocalDate day, String what, String with, Person reporter) {
    return life.ledger
        .entry(Source.LOST_AND_FOUND, "L" + (100_000 + life.number))
        .on(day)
        .put(animal)
        .put(Field.REPORT, what)
        .put(Field.DAY, day)
        .put(Field.ORG, with)
        .put(Role.PERSON, reporter)
        .saved();
  }

  private void over(End end, Ledger.Entry report) {
    truth.back(end.day);
    end.typed.ifPresent(typed -> report.on(typed).put(Field.REUNITED, end.day).saved());
  }

  /** A shelter takes the animal in, and writes down when its keeper fetched it. */
  private void strayed(LocalDate day, Person keeper) {
    Shelter shelter = dice.pick(List.of(Shelter.GARROWNESS, Shelter.HATHERSAND));
    shelter.cameIn(life, animal, day, "stray", Person.NOBODY);
    truth.found(day, shelter.contact(), new Told(shelter.source(), day));
    end(day).flatMap(End::typed).ifPresent(typed -> fetched(shelter, typed, keeper));
  }

  private void fetched(Shelter shelter, LocalDate day, Person keeper) {
    if (!day.isAfter(LAST_DAY)) {
      shelter.left(life, animal, day, "owner", keeper);
      truth.keeper(day, keeper, new Told(shelter.source(), day));
    }
  }

  private void numberTypedForAnother(LocalDate day, Person keeper) {
    String species = animal.species().equals("dog") ? "cat" : "dog";
    boolean alike = dice.permille(500);
    Animal other =
        alike
            ? described("Hesper", animal.species(), animal.born().minusDays(1000))
            : described("Hesper", species, animal.born());
    elsewhere()
        .ifPresent(
            clinic -> {
              new Clinics(life).card(clinic, other, day, life.somebodyElse(keeper));
              truth.shared(new Told(clinic, day), alike);
            });
  }

  /** The same animal, which a receptionist took for another kind. */
  private void kindMistyped(LocalDate day, Person keeper) {
    String species = animal.species().equals("dog") ? "cat" : "dog";
    Animal same = described(animal.name(), species, animal.born());
    elsewhere().ifPresent(clinic -> new Clinics(life).card(clinic, same, day, keeper));
  }

  private Animal described(String name, String species, LocalDate born) {
    return new Animal(animal.number(), animal.chip(), name, species, animal.sex(), born);
  }

  /** A clinic that does not know the animal. */
  private Optional<Source> elsewhere() {
    return List.of(Source.CORVELSEA_PATIENTS, Source.PELLERWICK_PATIENTS).stream()
        .filter(clinic -> life.ledger.of(clinic).isEmpty())
        .findFirst();
  }
}
