package withers.world;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Seeded small worlds that hold a bit of everything: equal seeds give equal worlds. What they say
 * is not always sensible, as in real records.
 */
public final class RandomWorld {

  /** The dates of the monthly rounds. */
  public static final List<LocalDate> ROUNDS =
      List.of(
          LocalDate.of(2026, 6, 30),
          LocalDate.of(2026, 7, 31),
          LocalDate.of(2026, 8, 31),
          LocalDate.of(2026, 9, 30));

  private static final List<String> PEOPLE =
      List.of(
          "Ada",
          "Ada'",
          "AdaMoved",
          "AdaMarried",
          "Nameless0101",
          "Unknown",
          "Bo",
          "BoMoved",
          "Cy",
          "Dee");
  private static final List<String> ANYBODY =
      List.of("Ada", "Bo", "Cy", "Carer", "Shelter", "Cattery", "own", "-", "\"Far_Away\"");
  private static final List<String> LASTING =
      List.of("adoption", "sale", "intake-surrender", "transfer", "return-to-owner");
  private static final List<String> DESCRIPTIONS =
      List.of("dog Rook 2015-01-01", "dog Moss 2020-01-01", "dog - 2021-01-01", "cat Moss");
  private static final List<String> FOR_A_TIME =
      List.of("foster", "intake-stray", "trial-started", "boarding");

  private final Random random;
  private final int chips;
  private final int shiftDays;
  private final List<String> lines = new ArrayList<>();

  private RandomWorld(long seed, int chips, int shiftDays) {
    this.random = new Random(seed);
    this.chips = chips;
    this.shiftDays = shiftDays;
  }

  /**
   * The lines of a world.
   *
   * @param shiftDays days by which every date is later than in the world of the same seed
   */
  public static String lines(long seed, int chips, int shiftDays) {
    return new RandomWorld(seed, chips, shiftDays).write();
  }

  private String write() {
    for (LocalDate round : ROUNDS) {
      for (String source :
          List.of(
              "shelter",
              "clinic",
              "vale-filled",
              "kennels",
              "works",
              "cattery",
              "desk",
              "north",
              "south")) {
        lines.add(source + " " + shifted(round));
      }
      supply(round);
      for (int chip = 1; chip <= chips; chip++) {
        if (random.nextInt(3) > 0) {
          say(subject(chip), chip, round);
        }
      }
    }
    return String.join("\n", lines);
  }

  private String subject(int chip) {
    return switch (random.nextInt(16)) {
      case 0 -> "?C" + chip + ",C" + (chip + 1);
      case 1 -> "#" + chip;
      case 2 -> "~9.9900" + chip % 2 + "E+14";
      case 3 -> "C" + (1 + chip % 2) + "000000";
      default -> number(chip);
    };
  }

  /** The last few are numbers that one registry only is given, or of the older kind. */
  private static String number(int chip) {
    return chip <= 8 ? "C" + chip : chip <= 10 ? "C" + (90 + chip + 100 * (chip % 2)) : "O" + chip;
  }

  /** Boxes of a few numbers, which overlap. */
  private void supply(LocalDate round) {
    String day = shifted(round.minusDays(300 + random.nextInt(300))).toString();
    int first = 1 + random.nextInt(chips);
    if (random.nextInt(3) == 0) {
      add(
          "works",
          round,
          "*",
          "b" + random.nextInt(3),
          "supplied %s C%d C%d %s%s"
              .formatted(
                  day,
                  first,
                  first + random.nextInt(4),
                  oneOf(List.of("Clinic", "Shelter", "\"Far_Away\"")),
                  random.nextBoolean() ? " prepaid" : ""));
    }
  }

  private void say(String subject, int chip, LocalDate round) {
    String day = shifted(round.minusDays(random.nextInt(240))).toString();
    switch (random.nextInt(31)) {
      case 0, 1, 2 ->
          add("shelter", round, subject, "s" + chip, went("outcome", day, oneOf(LASTING)));
      case 3 -> add("shelter", round, subject, "s" + chip, went("intake", day, oneOf(FOR_A_TIME)));
      case 4 -> add("kennels", round, subject, "k" + chip, went("sale", day, "sale"));
      case 5, 6, 7 -> add("clinic", round, subject, "p" + chip, visit(day));
      case 8 -> add("vale-filled", round, subject, "v" + chip, visit(day));
      case 9, 10, 11 -> add("north", round, subject, "n" + chip, registered(day));
      case 12, 13, 28, 29 -> add("south", round, subject, "z" + chip, registered(day));
      case 14 ->
          add(
              oneOf(List.of("north", "south")),
              round,
              subject,
              "n" + chip,
              oneOf(List.of("gone", "gone", "still")));
      case 15 -> add("clinic", round, subject, "p" + chip, pairingOrDeath(chip, day));
      case 16 ->
          add(
              "shelter",
              round,
              subject,
              "s" + chip,
              oneOf(List.of("withdrawn outcome", "rekeyed t" + chip)));
      case 17 -> add("desk", round, subject, "d" + chip, "lost " + day + " " + oneOf(ANYBODY));
      case 18 -> add("clinic", round, subject, "p" + chip, "is " + oneOf(DESCRIPTIONS));
      case 19 -> add("shelter", round, subject, "s" + chip, "is " + oneOf(DESCRIPTIONS));
      case 20 ->
          add(
              oneOf(List.of("clinic", "vale-filled")),
              round,
              subject,
              "p" + chip,
              "scanned " + day + " " + oneOf(List.of("read", "not-detected")));
      case 21 ->
          add(
              "clinic",
              round,
              subject,
              "p" + chip,
              random.nextInt(3) == 0 ? "died " + day : "paired C" + (1 + chip % chips));
      case 22, 23 -> sayTwice(subject, chip, round);
      case 24 -> add("shelter", round, "C" + chip, "s" + chip, "linked " + chip);
      case 25, 26 ->
          add("vale-filled", round, subject, "v" + chip, "implanted %s own".formatted(day));
      default -> add("north", round, "C" + (1000 + chip), "m" + chip, registered(day));
    }
  }

  /** One handover by both sides, or two on one day, or nearly so. */
  private void sayTwice(String subject, int chip, LocalDate round) {
    LocalDate day = round.minusDays(random.nextInt(240));
    String later = shifted(day.plusDays(random.nextInt(5))).toString();
    String basis = oneOf(LASTING);
    String parties = oneOf(ANYBODY) + " " + anyone();
    add(
        "shelter",
        round,
        subject,
        "s" + chip,
        "went/outcome %s %s %s".formatted(shifted(day), basis, parties));
    String again =
        random.nextBoolean()
            ? "went/intake %s %s %s".formatted(later, oneOf(LASTING), parties)
            : went("intake", shifted(day).toString(), basis);
    add(oneOf(List.of("cattery", "shelter")), round, subject, "c" + chip, again);
  }

  private String went(String slot, String day, String basis) {
    return "went/%s %s %s %s %s".formatted(slot, day, basis, oneOf(ANYBODY), anyone());
  }

  private String visit(String day) {
    return "visit %s %s/%d".formatted(day, oneOf(PEOPLE), random.nextInt(3));
  }

  private String registered(String day) {
    return "registered %s %s".formatted(random.nextInt(5) == 0 ? "-" : day, anyone());
  }

  private String pairingOrDeath(int chip, String day) {
    return switch (random.nextInt(4)) {
      case 0 -> "died " + day;
      case 1 -> "withdrawn pairing";
      default -> "paired C" + (1 + (chip + random.nextInt(3)) % chips);
    };
  }

  private String anyone() {
    return random.nextInt(4) == 0 ? oneOf(ANYBODY) : oneOf(PEOPLE);
  }

  private void add(String source, LocalDate round, String subject, String key, String says) {
    lines.add("%s %s %s %s %s".formatted(source, shifted(round), subject, key, says));
  }

  private LocalDate shifted(LocalDate day) {
    return day.plusDays(shiftDays);
  }

  private <T> T oneOf(List<T> values) {
    return values.get(random.nextInt(values.size()));
  }
}
