package withers.law;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.Stream;
import withers.demo.DemoWorld;

/**
 * A small world's exports, and the ways in which they may arrive. Besides the scenario's two months
 * there is a middle of October, in which some sources lose half of their rows, and a November, in
 * which most of them are back. Built on {@link Random}, whose algorithm its documentation lays
 * down.
 */
final class Deliveries {

  /** Of a small world's few rows, a few damaged ones are a large share. */
  private static final String MANY_REJECTS = "\nlimits: {rejects: 100 %, floor: 0}\n";

  private static final String DAY = "\\d{4}-\\d{2}-\\d{2}(?=\\.csv)";

  private final Path folder;
  private final Random random;
  private final List<Path> inOrder = new ArrayList<>();
  private int parts;

  Deliveries(Path folder, long seed, int animals) throws IOException {
    this.folder = folder;
    this.random = new Random(seed);
    DemoWorld.generate(seed, animals, folder);
    for (Path profile : files(workspace().resolve("sources"))) {
      Files.writeString(profile, MANY_REJECTS, StandardOpenOption.APPEND);
    }
    inOrder.addAll(files(folder.resolve("2026-09")));
    inOrder.addAll(files(folder.resolve("2026-10")));
    later("2026-10-15", 0.5);
    later("2026-11-01", 0.9);
  }

  Path workspace() {
    return folder.resolve("workspace");
  }

  /** Every export alone, the older ones first. */
  List<List<Path>> straight() {
    return inOrder.stream().map(List::of).toList();
  }

  /** In any order, some twice, some cut into files that arrive together. */
  List<List<Path>> mixed() throws IOException {
    List<List<Path>> mixed = new ArrayList<>();
    for (Path file : inOrder) {
      mixed.add(random.nextInt(3) == 0 ? cut(file) : List.of(file));
    }
    inOrder.stream().filter(file -> random.nextInt(4) == 0).map(List::of).forEach(mixed::add);
    Collections.shuffle(mixed, random);
    return mixed;
  }

  private void later(String day, double kept) throws IOException {
    Path later = Files.createDirectories(folder.resolve(day));
    for (Path file : files(folder.resolve("2026-10"))) {
      String name = file.getFileName().toString();
      if (random.nextInt(4) == 0 && !name.startsWith("lost-and-found")) {
        List<String> lines = Files.readAllLines(file);
        List<String> rows = new ArrayList<>(lines.subList(1, lines.size()));
        rows.removeIf(row -> random.nextDouble() >= kept);
        Path thinned = later.resolve(name.replaceFirst(DAY, day));
        inOrder.add(write(thinned, lines.get(0), rows));
      }
    }
  }

  private List<Path> cut(Path file) throws IOException {
    List<String> lines = Files.readAllLines(file);
    List<String> rows = new ArrayList<>(lines.subList(1, lines.size()));
    Collections.shuffle(rows, random);
    int at = random.nextInt(rows.size() + 1);
    return List.of(
        write(part(file), lines.get(0), rows.subList(0, at)),
        write(part(file), lines.get(0), rows.subList(at, rows.size())));
  }

  private Path part(Path file) throws IOException {
    Path part = Files.createDirectories(folder.resolve("part-" + ++parts));
    return part.resolve(file.getFileName().toString());
  }

  private static Path write(Path file, String header, List<String> rows) throws IOException {
    List<String> lines = new ArrayList<>(List.of(header));
    lines.addAll(rows);
    return Files.write(file, lines);
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }
}
