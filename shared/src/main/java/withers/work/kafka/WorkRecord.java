package withers.work.kafka;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.Map;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.common.header.Header;
import org.jspecify.annotations.Nullable;
import withers.log.LogUnavailableException;

/** The headers of records of shared work: texts in UTF-8. */
final class WorkRecord {
  static final int VERSION = 1;

  static final String TYPE = "type";
  static final String RUN = "run";
  static final String PART = "part";
  static final String RULES = "rules";
  static final String WORKER = "worker";
  static final String ASKED = "asked";
  static final String MILLIS = "millis";
  static final String PROCESSOR_MILLIS = "processor-millis";

  static final String ORDER = "order";
  static final String HELLO = "hello";
  static final String HERE = "here";
  static final String QUESTION = "question";
  static final String ANSWER = "answer";
  static final String RESULT = "result";
  static final String REFUSAL = "refusal";

  private static final String VERSION_HEADER = "version";

  private WorkRecord() {}

  /** The headers of one message. */
  static Map<String, String> headers(String type, String run, int part, Map<String, String> more) {
    Map<String, String> all = new java.util.HashMap<>(more);
    all.put(TYPE, type);
    all.put(VERSION_HEADER, String.valueOf(VERSION));
    all.put(RUN, run);
    all.put(PART, String.valueOf(part));
    return all;
  }

  static String text(ConsumerRecord<byte[], byte[]> record, String name) {
    @Nullable Header header = record.headers().lastHeader(name);
    return header == null || header.value() == null ? "" : new String(header.value(), UTF_8);
  }

  static int number(ConsumerRecord<byte[], byte[]> record, String name) {
    return Integer.parseInt(text(record, name));
  }

  /** Whether it is a message of some work, written by a program that agrees on what it means. */
  static boolean isOf(ConsumerRecord<byte[], byte[]> record, String run, String type) {
    return text(record, RUN).equals(run) && text(record, TYPE).equals(type) && isKnown(record);
  }

  static boolean isKnown(ConsumerRecord<byte[], byte[]> record) {
    return text(record, VERSION_HEADER).equals(String.valueOf(VERSION));
  }

  static LogUnavailableException unknown(ConsumerRecord<byte[], byte[]> record) {
    return new LogUnavailableException(
        "Expected work of version %d on the topic %s, but found version %s: use the same Withers here as where the work is ordered"
            .formatted(VERSION, record.topic(), text(record, VERSION_HEADER)));
  }
}
