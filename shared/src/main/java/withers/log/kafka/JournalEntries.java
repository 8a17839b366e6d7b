package withers.log.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.apache.kafka.clients.producer.ProducerRecord;
import withers.codec.MarkerJson;
import withers.id.ImportId;
import withers.log.Contents;
import withers.log.ImportMarker;

/** The records of the topic of imports. */
final class JournalEntries {

  static final int VERSION = 1;

  /** Makes an attempt visible. Its value is the marker's JSON. */
  static final String MARKER = "marker";

  /** Begins an attempt. Its value says where the places ended. */
  static final String BEGUN = "begun";

  /** Writes attempts off for good. Its value names them, one a line. */
  static final String SWEPT = "swept";

  private JournalEntries() {}

  static ProducerRecord<byte[], byte[]> marker(String topic, Committed committed) {
    ImportMarker marker = committed.marker();
    Map<String, Object> headers = headers(MARKER, "application/json");
    headers.put(LogHeaders.IMPORT, marker.id());
    headers.put(LogHeaders.ATTEMPT, committed.attempt().number());
    headers.put(LogHeaders.CONTENTS, committed.contents().text());
    return record(topic, marker.chain().value(), MarkerJson.write(marker), headers);
  }

  static ProducerRecord<byte[], byte[]> begun(
      String topic, ImportId id, Map<Contents.Place, Long> from) {
    Map<String, Object> headers = headers(BEGUN, "text/plain");
    headers.put(LogHeaders.IMPORT, id);
    return record(topic, "", Begun.text(from), headers);
  }

  static ProducerRecord<byte[], byte[]> swept(String topic, Collection<Attempt> attempts) {
    List<String> lines = attempts.stream().map(one -> one.importId() + " " + one.number()).toList();
    return record(topic, "", String.join("\n", lines), headers(SWEPT, "text/plain"));
  }

  static List<Attempt> swept(String text) {
    return text.lines()
        .map(line -> line.split(" "))
        .map(
            parts -> new Attempt(new ImportId(UUID.fromString(parts[0])), Long.parseLong(parts[1])))
        .toList();
  }

  private static Map<String, Object> headers(String type, String contentType) {
    Map<String, Object> headers = new LinkedHashMap<>();
    headers.put(LogHeaders.TYPE, type);
    headers.put(LogHeaders.VERSION, VERSION);
    headers.put(LogHeaders.CONTENT_TYPE, contentType);
    return headers;
  }

  private static ProducerRecord<byte[], byte[]> record(
      String topic, String key, String value, Map<String, Object> headers) {
    return LogHeaders.with(
        new ProducerRecord<>(topic, 0, key.getBytes(UTF_8), value.getBytes(UTF_8)), headers);
  }
}
