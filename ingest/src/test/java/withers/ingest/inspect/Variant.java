package withers.ingest.inspect;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import withers.ingest.profile.DatePattern;
import withers.yaml.Choices;

/**
 * An export as somebody else's software would write it: headers in the words of one person of
 * {@code renamed-headers.tsv}, columns shuffled, days in another form.
 *
 * @param rows the first is the header
 * @param truth for each path the headers that are right
 */
record Variant(
    long seed,
    String file,
    String person,
    String kind,
    String date,
    List<List<String>> rows,
    Map<String, Set<String>> truth) {

  private static final List<String> DATES =
      List.of(
          "yyyy-MM-dd",
          "dd/MM/yyyy",
          "MM/dd/yyyy",
          "d/M/yyyy",
          "M/d/yyyy",
          "dd.MM.yyyy",
          "d.M.yyyy",
          "dd-MM-yyyy",
          "MM-dd-yyyy",
          "yyyyMMdd",
          "dd MMM yyyy",
          "yyyy-MM-dd HH:mm:ss",
          "dd/MM/yyyy HH:mm");

  static Variant of(long seed, List<DemoExports.Export> exports) {
    Random random = new Random(seed * 0x9E3779B97F4A7C15L); // else small seeds start alike
    DemoExports.Export export = exports.get((int) (seed % exports.size()));
    String kind = Choices.name(export.profile().kind());
    RenamedHeaders names = RenamedHeaders.load();
    String person = names.people().get(random.nextInt(names.people().size()));
    String date = DATES.get(random.nextInt(DATES.size()));
    Map<String, Set<String>> old = Truth.of(export.profile());
    List<String> header = header(export.rows().get(0), old, kind, person, names);
    List<List<String>> rows = new ArrayList<>(List.of(header));
    DatePattern was = export.profile().format().date();
    for (List<String> row : export.rows().subList(1, export.rows().size())) {
      rows.add(row.stream().map(cell -> written(cell, was, date)).toList());
    }
    Map<String, Set<String>> truth = renamed(old, export.rows().get(0), header);
    return new Variant(
        seed, fileName(export.file()), person, kind, date, shuffled(rows, random), truth);
  }

  /** The same with headers that say nothing. */
  Variant withoutWords() {
    List<String> header = new ArrayList<>();
    for (int i = 0; i < rows.get(0).size(); i++) {
      header.add("Column " + (char) ('A' + i));
    }
    List<List<String>> renamed = new ArrayList<>(rows);
    renamed.set(0, header);
    return new Variant(
        seed, file, "nobody", kind, date, renamed, renamed(truth, rows.get(0), header));
  }

  /** The name without what tells the kind. */
  private static String fileName(String file) {
    return "export" + file.substring(file.indexOf("-20"));
  }

  private static List<String> header(
      List<String> old,
      Map<String, Set<String>> truth,
      String kind,
      String person,
      RenamedHeaders names) {
    return old.stream()
        .map(
            header ->
                truth.entrySet().stream()
                    .filter(e -> e.getValue().contains(header.toLowerCase(Locale.ROOT)))
                    .findFirst()
                    .map(e -> names.of(kind, e.getKey(), person))
                    .orElse(header))
        .toList();
  }

  private static Map<String, Set<String>> renamed(
      Map<String, Set<String>> truth, List<String> old, List<String> header) {
    Map<String, Set<String>> renamed = new LinkedHashMap<>();
    truth.forEach(
        (path, headers) -> {
          Set<String> now = new TreeSet<>();
          for (int i = 0; i < old.size(); i++) {
            String was = old.get(i);
            if (headers.contains(was) || headers.contains(was.toLowerCase(Locale.ROOT))) {
              now.add(header.get(i));
            }
          }
          renamed.put(path, now);
        });
    return renamed;
  }

  private static String written(String cell, DatePattern was, String date) {
    Optional<LocalDate> day = was.read(cell);
    return day.map(
            d ->
                d.atTime(d.getDayOfMonth() % 12 + 8, 30)
                    .format(DateTimeFormatter.ofPattern(date, Locale.ENGLISH)))
        .orElse(cell);
  }

  private static List<List<String>> shuffled(List<List<String>> rows, Random random) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < rows.get(0).size(); i++) {
      order.add(i);
    }
    Collections.shuffle(order, random);
    List<List<String>> shuffled = new ArrayList<>();
    for (List<String> row : rows) {
      boolean whole = row.size() == order.size();
      shuffled.add(whole ? order.stream().map(row::get).toList() : row);
    }
    return shuffled;
  }
}
