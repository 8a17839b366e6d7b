package withers.report.cli;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.icegreen.greenmail.util.GreenMail;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import withers.codec.Streams;
import withers.log.EventLog;
import withers.log.LogSnapshot;
import withers.log.LogStream;
import withers.log.sqlite.SqliteEventLog;
import withers.report.schedule.cli.OneNight;

/**
 * All that a night leaves behind and that must not depend on how often it was begun.
 *
 * @param events of every stream but that of deliveries, in which each attempt is written down
 * @param leftovers batches of imports and runs that never became visible
 * @param files digests of runs, lists and mails that are ready
 * @param settled up to when nothing of a job is left to be done
 * @param mails what the server took over
 */
record NightsEnd(
    List<String> events,
    long leftovers,
    Map<String, String> files,
    List<String> quarantined,
    List<String> receipts,
    Map<String, Instant> settled,
    List<String> mails) {

  static NightsEnd of(Path folder, Instant now, GreenMail server) throws Exception {
    try (EventLog log = log(folder)) {
      return new NightsEnd(
          events(log.snapshot()),
          log.sweep(),
          files(folder),
          List.copyOf(contents(folder.resolve("quarantine")).values()).stream().sorted().toList(),
          List.copyOf(contents(folder.resolve("receipts")).keySet()),
          OneNight.settled(folder, now),
          Mailbox.of(server).stream().map(NightsEnd::told).toList());
    }
  }

  /** Part by part, so that a difference is told and not the whole. */
  void assertIsAs(NightsEnd other) {
    assertThat(files).containsExactlyEntriesOf(other.files);
    assertThat(events).isEqualTo(other.events);
    assertThat(mails).isEqualTo(other.mails);
    assertThat(this).isEqualTo(other);
  }

  static EventLog log(Path folder) {
    return SqliteEventLog.open(folder.resolve("log/events.db"));
  }

  private static List<String> events(LogSnapshot snapshot) {
    List<String> events = new ArrayList<>();
    for (LogStream<?> stream : Streams.all()) {
      for (int partition = 0; partition < stream.partitions(); partition++) {
        if (!stream.equals(Streams.DELIVERIES)) {
          snapshot.replay(
              stream,
              partition,
              (event, marker) ->
                  events.add("%s %s %s".formatted(marker.chain(), marker.exportDate(), event)));
        }
      }
    }
    return events.stream().sorted().toList();
  }

  private static String told(SentList mail) {
    return "%s %s %s %s"
        .formatted(
            mail.to(),
            mail.id(),
            mail.rows(),
            text(mail.mail().content().getBytes(StandardCharsets.ISO_8859_1)));
  }

  /** Of a mail without what is attached to it. A workbook says when it was written. */
  private static String text(byte[] mail) {
    String text = new String(mail, StandardCharsets.ISO_8859_1);
    int attached = text.indexOf("Content-Disposition: attachment");
    return digest((attached < 0 ? text : text.substring(0, attached)).getBytes(UTF_8));
  }

  private static String digest(byte[] content) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }

  private static Map<String, String> files(Path folder) throws IOException {
    Map<String, String> files = new TreeMap<>();
    for (String kept : List.of("runs", "lists", "outbox")) {
      contents(folder.resolve(kept)).forEach((name, text) -> files.put(kept + "/" + name, text));
    }
    return files;
  }

  /** Not a workbook, which says when it was written: the mails' are read. */
  private static boolean isCompared(Path file) {
    return Files.isRegularFile(file) && !file.toString().endsWith(".xlsx");
  }

  private static Map<String, String> contents(Path folder) throws IOException {
    Map<String, String> contents = new TreeMap<>();
    try (Stream<Path> files = Files.walk(folder)) {
      for (Path file : files.filter(NightsEnd::isCompared).toList()) {
        contents.put(
            folder.relativize(file).toString(),
            file.toString().endsWith(".eml")
                ? text(Files.readAllBytes(file))
                : digest(Files.readAllBytes(file)));
      }
    }
    return contents;
  }
}
