package withers.ingest.dirty;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import withers.codec.Streams;
import withers.contact.ContactVault;
import withers.fact.ChipEvent;
import withers.ingest.ImportReport;
import withers.log.EventLog;
import withers.log.ImportMarker;
import withers.log.LogSnapshot;
import withers.log.LogStream;

/** Tells, row by row, what an import wrote to the log, the vault and the quarantine. */
final class WhatWasRead {

  private record Place(String file, long line) implements Comparable<Place> {
    @Override
    public int compareTo(Place other) {
      int byFile = file.compareTo(other.file);
      return byFile != 0 ? byFile : Long.compare(line, other.line);
    }
  }

  private final FactText facts;
  private final Map<Place, List<ChipEvent>> events = new TreeMap<>();
  private final Map<Place, List<String>> rows = new TreeMap<>();

  WhatWasRead(EventLog log, ContactVault vault, List<ImportReport> reports) {
    this.facts = new FactText(vault);
    LogSnapshot snapshot = log.snapshot();
    List.of(Streams.CHIPS, Streams.SUPPLY, Streams.UNPLACED)
        .forEach(stream -> gather(snapshot, stream));
    events.forEach((place, here) -> rows.put(place, new ArrayList<>(facts.lines(here))));
    reports.forEach(report -> report.quarantine().ifPresent(this::gather));
  }

  private void gather(LogSnapshot snapshot, LogStream<ChipEvent> stream) {
    IntStream.range(0, stream.partitions())
        .forEach(partition -> snapshot.replay(stream, partition, this::gather));
  }

  private void gather(ChipEvent event, ImportMarker marker) {
    String file = marker.files().get(event.origin().locator().file()).name();
    Place place = new Place(file, event.origin().locator().line());
    events.computeIfAbsent(place, p -> new ArrayList<>()).add(event);
  }

  private void gather(Path quarantine) {
    CSVFormat format = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (Reader reader = Files.newBufferedReader(quarantine);
        CSVParser parser = CSVParser.parse(reader, format)) {
      parser.forEach(this::reject);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private void reject(CSVRecord row) {
    String column = row.get("column");
    rows.computeIfAbsent(
            new Place(row.get("file"), Long.parseLong(row.get("line"))), p -> new ArrayList<>())
        .add(
            "quarantined, %s%s: %s"
                .formatted(
                    row.get("code"),
                    column.isEmpty() ? "" : ", column \"" + column + "\"",
                    row.get("reason")));
  }

  /** A block of lines for each row of the files. */
  String text() {
    boolean several = rows.keySet().stream().map(Place::file).distinct().count() > 1;
    StringBuilder text = new StringBuilder();
    rows.forEach(
        (place, lines) -> {
          text.append(several ? place.file + ", " : "").append("line ").append(place.line);
          lines.forEach(line -> text.append("\n    ").append(line));
          text.append("\n");
        });
    return text.toString();
  }
}
