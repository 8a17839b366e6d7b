package withers.oracle;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/**
 * Makes a month that no generator of sensible lives would: rows of the months before are left out,
 * emptied, mixed up, renumbered and paired at random, so that every sentence about statements that
 * change is put to work. Built on {@link Random}, whose algorithm its documentation lays down.
 */
final class Turmoil {

  private static final List<String> NAMELESS =
      List.of("UNKNOWN", "n/a", "T.B.A.", "Cash sale", "x");

  private final Random random;

  Turmoil(long seed) {
    this.random = new Random(seed);
  }

  /** Writes the exports of a month from the newest ones of each source before it. */
  void stir(Path world, Month month) throws IOException {
    List<Path> before = new ArrayList<>(month.foldersUpToHere(world));
    Path folder = Files.createDirectories(before.remove(before.size() - 1));
    for (Layout layout : Layout.values()) {
      Optional<ExportFile> known = known(before, layout);
      if (known.isPresent() && !chance(60)) {
        LocalDate exported = month.asOf().minusDays(random.nextInt(4));
        ExportFile stirred = stirred(known.get(), layout, exported);
        stirred.write(folder.resolve(fileName(layout, month, exported)), layout);
      }
    }
  }

  private static String fileName(Layout layout, Month month, LocalDate exported) {
    String window = month.asOf().minusMonths(1).plusDays(1) + "-";
    return layout.id() + "-" + (layout == Layout.LOST_AND_FOUND ? window : "") + exported + ".csv";
  }

  /** What a source last said of each of its records, or, of sources that send all, sent last. */
  private static Optional<ExportFile> known(List<Path> folders, Layout layout) throws IOException {
    Map<String, Map<String, String>> rows = new LinkedHashMap<>();
    ExportFile last = null;
    for (Path folder : folders) {
      for (Path file : ExportFile.in(folder)) {
        if (ExportFile.named(file).filter(name -> name.group(1).equals(layout.id())).isPresent()) {
          last = ExportFile.read(file, layout);
          if (!layout.sendsChanges()) {
            rows.clear();
          }
          String key = last.headers().get(layout.keyColumn());
          last.rows().forEach(row -> rows.put(row.get(key), row));
        }
      }
    }
    return last == null
        ? Optional.empty()
        : Optional.of(
            new ExportFile(
                last.source(), last.exported(), last.headers(), new ArrayList<>(rows.values())));
  }

  private ExportFile stirred(ExportFile known, Layout layout, LocalDate exported) {
    int missing = layout.sendsChanges() ? 850 : chance(80) ? 300 : 8;
    List<Map<String, String>> rows = new ArrayList<>();
    for (Map<String, String> row : known.rows()) {
      if (!chance(missing)) {
        Map<String, String> copy = new LinkedHashMap<>(row);
        if (chance(layout.sendsChanges() ? 700 : 250)) {
          touch(copy, known, layout, exported);
        }
        rows.add(copy);
      }
    }
    return new ExportFile(known.source(), exported, known.headers(), rows);
  }

  private void touch(Map<String, String> row, ExportFile known, Layout layout, LocalDate exported) {
    List<Layout.Group> groups = layout.groups();
    Layout.Group group = groups.get(random.nextInt(groups.size()));
    Map<String, String> other = known.rows().get(random.nextInt(known.rows().size()));
    String first = group.columns().get(0);
    switch (group.kind()) {
      case "number" -> row.compute(first, (header, number) -> misread(number, other.get(first)));
      case "second" -> row.put(first, second(other.get(layout.numberColumn())));
      case "absent" ->
          row.compute(first, (header, number) -> number.isEmpty() ? other.get(first) : "");
      case "day" -> row.compute(first, (header, day) -> moved(day, layout, exported));
      case "event", "details" -> {
        boolean emptied = chance(400);
        group.columns().forEach(column -> row.put(column, emptied ? "" : other.get(column)));
      }
      case "placeholder" -> {
        boolean reachable = chance(300);
        group.columns().forEach(column -> row.compute(column, (h, cell) -> reachable ? cell : ""));
        row.put(first, chance(200) ? "" : NAMELESS.get(random.nextInt(NAMELESS.size())));
      }
      case "person", "word" ->
          group.columns().forEach(column -> row.put(column, other.get(column)));
      default -> throw new IllegalArgumentException(group.toString());
    }
  }

  private String second(String number) {
    if (chance(300)) {
      return "";
    }
    return chance(600) && number.length() >= 9 ? withLetter(number) : number;
  }

  private String misread(String number, String another) {
    if (number.length() < 9) {
      return number;
    }
    int at = number.length() - 1 - random.nextInt(4);
    if (number.contains("O") && chance(500)) {
      return number.replace('O', '0');
    }
    if (number.endsWith("000000") && chance(300)) {
      return number.substring(0, number.length() - 6) + (100_000 + random.nextInt(900_000));
    }
    return switch (random.nextInt(6)) {
      case 0 -> replaced(number, at, (char) ('0' + random.nextInt(10)));
      case 1 -> replaced(replaced(number, at, number.charAt(at - 1)), at - 1, number.charAt(at));
      case 2 -> withLetter(number);
      case 3 -> number.substring(0, number.length() - 6) + "000000";
      case 4 -> number.matches("[0-9]{15}") ? scientific(number) : another;
      default -> another;
    };
  }

  private static String withLetter(String number) {
    return number.substring(0, 4) + number.substring(4).replaceFirst("0", "O");
  }

  /** What a spreadsheet shows: six digits, cut here though it may round. */
  private static String scientific(String number) {
    return number.charAt(0) + "." + number.substring(1, 6) + "E+14";
  }

  private static String replaced(String text, int at, char with) {
    return text.substring(0, at) + with + text.substring(at + 1);
  }

  private String moved(String day, Layout layout, LocalDate exported) {
    if (day.isEmpty() || chance(300)) {
      return exported.minusDays(random.nextInt(120)).format(layout.days());
    }
    try {
      return LocalDate.parse(day, layout.days())
          .minusDays(random.nextInt(200))
          .format(layout.days());
    } catch (DateTimeParseException misspelt) {
      return day;
    }
  }

  private boolean chance(int permille) {
    return random.nextInt(1000) < permille;
  }
}
