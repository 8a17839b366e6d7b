package withers.world;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/**
 * Seeded small worlds of which little is told: a few animals whose chips are seldom read, whose
 * clients are seldom named, and that came from boxes. Equal seeds give equal worlds.
 */
public final class QuietWorld {

  private static final List<String> SOURCES =
      List.of("clinic-filled", "vale-filled", "shelter", "kennels", "works", "desk", "north");
  private static final List<String> CLINICS = List.of("clinic-filled", "vale-filled");
  private static final List<String> NUMBERS = List.of("C100", "C101", "C102", "O103", "O104");

  private final Random random;
  private final List<String> lines = new ArrayList<>();

  private QuietWorld(long seed) {
    this.random = new Random(seed);
  }

  /** The lines of a world, with the rounds of {@link RandomWorld}. */
  public static String lines(long seed) {
    return new QuietWorld(seed).write();
  }

  private String write() {
    for (LocalDate round : RandomWorld.ROUNDS) {
      SOURCES.forEach(source -> lines.add(source + " " + round));
      supply(round);
      NUMBERS.stream()
          .filter(number -> random.nextInt(3) > 0)
          .forEach(number -> say(number, round));
    }
    return String.join("\n", lines);
  }

  /** Boxes of a few numbers, bought about a year ago. */
  private void supply(LocalDate round) {
    if (random.nextInt(3) == 0) {
      String text = "supplied %s C%d C%d %s";
      int first = 99 + random.nextInt(3);
      String purchaser = oneOf(List.of("Clinic", "\"Vale_Clinic\"", "Shelter"));
      LocalDate day = round.minusDays(300 + random.nextInt(120));
      add(
          "works",
          round,
          "*",
          "b" + random.nextInt(2),
          text.formatted(day, first, first + 1, purchaser));
    }
  }

  private void say(String number, LocalDate round) {
    String day = round.minusDays(random.nextInt(150)).toString();
    String clinic = oneOf(CLINICS);
    String key = "p" + number;
    switch (random.nextInt(20)) {
      case 0, 1, 2, 3, 4, 5 ->
          add(clinic, round, number, key, "visit " + day + " " + oneOf(List.of("Ada", "Bo")));
      case 6 -> add(clinic, round, number, key, "visit " + day + " Unknown");
      case 7, 8, 9 -> add(clinic, round, number, key, "scanned " + day + " read");
      case 10 -> add(clinic, round, number, key, "scanned " + day + " not-detected");
      case 11 -> add(anybody(), round, number, key, "implanted " + day + " own");
      case 12, 13 -> add(clinic, round, number, key, "paired " + oneOf(NUMBERS));
      case 14 -> add("north", round, number, key, "registered " + day + " Ada");
      case 15 -> add("shelter", round, number, key, "went " + day + " adoption own Bo");
      case 16 -> add("desk", round, number, key, "found " + day + " -");
      case 17 -> add(clinic, round, number, key, "withdrawn " + oneOf(List.of("scan", "implant")));
      case 18 -> add(anybody(), round, "?C99,C101", key, "implanted " + day + " own");
      default -> add(anybody(), round, "?C99,C101", key, "corrected implant");
    }
  }

  private String anybody() {
    return oneOf(List.of("clinic-filled", "vale-filled", "shelter", "kennels"));
  }

  private void add(String source, LocalDate round, String subject, String key, String says) {
    lines.add("%s %s %s %s %s".formatted(source, round, subject, key, says));
  }

  private <T> T oneOf(List<T> values) {
    return values.get(random.nextInt(values.size()));
  }
}
