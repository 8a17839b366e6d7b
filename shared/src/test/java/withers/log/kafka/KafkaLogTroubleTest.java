package withers.log.kafka;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.AlterConfigOp;
import org.apache.kafka.clients.admin.ConfigEntry;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.admin.RecordsToDelete;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.config.ConfigResource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.extension.RegisterExtension;
import withers.codec.Streams;
import withers.fact.ChipEvent;
import withers.fact.Fact;
import withers.fact.RandomEvents;
import withers.fact.Subject;
import withers.kafka.Broker;
import withers.kafka.KafkaCluster;
import withers.kafka.KafkaSettings;
import withers.log.Batch;
import withers.log.EventLog;
import withers.log.LogDamagedException;
import withers.log.LogUnavailableException;
import withers.log.Replayed;
import withers.log.SampleMarkers;

/** Each trouble is told in words that say where it is and what to do. */
@Tag("kafka")
@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
@Timeout(value = 2, unit = TimeUnit.MINUTES)
class KafkaLogTroubleTest {

  @RegisterExtension static final Broker BROKER = new Broker();

  private final String prefix = BROKER.newPrefix();
  private final RandomEvents random = new RandomEvents(77);

  @AfterEach
  void drop() {
    BROKER.drop(prefix);
  }

  @Test
  void a_broker_that_is_not_there_is_waited_for_but_not_long() {
    KafkaCluster nowhere =
        new KafkaCluster(
            KafkaSettings.open("127.0.0.1:1", prefix),
            Path.of(""),
            file -> "",
            Duration.ofSeconds(2));
    long since = System.nanoTime();
    assertThatThrownBy(() -> KafkaEventLog.open(nowhere))
        .isInstanceOf(LogUnavailableException.class)
        .hasMessage(
            "Expected a Kafka broker at 127.0.0.1:1, but none answered within 2 seconds; see that"
                + " it runs and can be reached, and that log.kafka.bootstrap-servers names it");
    assertThat(Duration.ofNanos(System.nanoTime() - since)).isLessThan(Duration.ofSeconds(30));
  }

  @Test
  void a_name_that_nobody_knows_is_told() {
    KafkaCluster nowhere =
        new KafkaCluster(
            KafkaSettings.open("broker.invalid:9092", prefix),
            Path.of(""),
            file -> "",
            Duration.ofSeconds(2));
    assertThatThrownBy(() -> KafkaEventLog.open(nowhere))
        .isInstanceOf(LogUnavailableException.class)
        .hasMessageContaining("broker.invalid:9092");
  }

  @Test
  void another_number_of_partitions_is_refused() throws Exception {
    BROKER.log(prefix).close();
    replace("chips", 8);
    assertRefused(
        "Expected 64 partitions of the topic %s.chips, but found 8; partitions are never added or merged: choose another log.kafka.topic-prefix, and take over what is there with \"withers log copy\""
            .formatted(prefix));
  }

  @Test
  void a_topic_that_forgets_is_refused() throws Exception {
    BROKER.log(prefix).close();
    set("supply", "retention.ms", "604800000");
    assertRefused(
        "Expected the topic %s.supply to have retention.ms=-1, but found 604800000; with other settings Kafka would delete what must stay: set it, then repeat"
            .formatted(prefix));
  }

  @Test
  void a_topic_that_is_gone_with_what_was_in_it_is_missed() throws Exception {
    fill(10);
    delete("chips");
    assertRefused(
        "Expected the topic %s.chips, but it is missing although imports have brought events to it; restore it, or choose another log.kafka.topic-prefix"
            .formatted(prefix));
  }

  @Test
  void markers_that_are_gone_are_missed() throws Exception {
    fill(10);
    delete("imports");
    assertRefused(
        "Expected the topic %s.imports, but it is missing although others of its prefix are there; restore it, or choose another log.kafka.topic-prefix"
            .formatted(prefix));
  }

  @Test
  void a_topic_that_nothing_was_written_to_is_made_again() throws Exception {
    fill(10);
    delete("supply");
    try (EventLog log = BROKER.log(prefix)) {
      assertThat(Replayed.of(log.snapshot()).events()).hasSize(10);
    }
  }

  @Test
  void records_that_were_deleted_are_missed() throws Exception {
    fill(10);
    try (Admin admin = BROKER.admin()) {
      TopicPartition partition = new TopicPartition(prefix + ".chips", 3);
      admin.deleteRecords(Map.of(partition, RecordsToDelete.beforeOffset(1))).all().get();
    }
    try (EventLog log = BROKER.log(prefix)) {
      assertThatThrownBy(() -> Replayed.of(log.snapshot()))
          .isInstanceOf(LogDamagedException.class)
          .hasMessageStartingWith("The event log on Kafka at " + BROKER.address() + " is damaged");
    }
  }

  @Test
  void a_record_that_is_not_ours_is_told_with_its_place() throws Exception {
    fill(10);
    ProducerRecord<byte[], byte[]> alien =
        new ProducerRecord<>(prefix + ".chips", 3, null, new byte[] {1, 2, 3});
    send(alien);
    try (EventLog log = BROKER.log(prefix)) {
      assertThat(Replayed.of(log.snapshot()).events()).hasSize(10); // it stands behind
      log.append(new Batch<>(Streams.CHIPS, 3, SampleMarkers.id(2), 0, random.events(1)));
      log.commit(
          SampleMarkers.marker(SampleMarkers.id(2), Optional.of(SampleMarkers.id(1)), "alpha"));
      assertThatThrownBy(() -> Replayed.of(log.snapshot()))
          .isInstanceOf(LogDamagedException.class)
          .hasMessage(
              "Event log, topic %s.chips, partition 3, offset 1: the header 'import' is not as this program writes it; see who else writes to the topic"
                  .formatted(prefix));
    }
  }

  @Test
  void what_a_newer_program_wrote_is_refused() throws Exception {
    BROKER.log(prefix).close();
    send(
        LogHeaders.with(
            new ProducerRecord<>(prefix + ".imports", 0, null, new byte[0]),
            Map.of("type", "marker", "version", 2)));
    assertRefused(
        "Event log, topic %s.imports, partition 0, offset 0: expected a marker, begun or swept of version 1, but found marker of version 2, which a newer program wrote; use that one"
            .formatted(prefix));
  }

  @Test
  void an_event_that_is_larger_than_the_broker_takes_is_told_and_nothing_of_it_seen()
      throws Exception {
    try (EventLog log = BROKER.log(prefix)) {
      set("unplaced", "max.message.bytes", "2000");
      Batch<ChipEvent> large =
          new Batch<>(Streams.UNPLACED, 0, SampleMarkers.id(1), 0, List.of(largeEvent()));
      assertThatThrownBy(() -> log.append(large))
          .isInstanceOf(LogUnavailableException.class)
          .hasMessage(
              "A record of the event log is larger than the broker takes; raise max.message.bytes of the topics %s.*, then repeat"
                  .formatted(prefix));
      assertThat(log.snapshot().markers()).isEmpty();
    }
  }

  /** The broker takes no time of a record but its own: as if all other clocks were behind. */
  @Test
  void a_clock_that_is_too_far_from_the_broker_s_is_told() throws Exception {
    try (EventLog log = BROKER.log(prefix)) {
      set("chips", "message.timestamp.before.max.ms", "0");
      Batch<ChipEvent> batch =
          new Batch<>(Streams.CHIPS, 3, SampleMarkers.id(1), 0, random.events(5));
      assertThatThrownBy(() -> log.append(batch))
          .isInstanceOf(LogUnavailableException.class)
          .hasMessage(
              "The clocks of this machine and of the Kafka broker at %s are too far apart for the event log; set both right, then repeat"
                  .formatted(BROKER.address()));
    }
  }

  @Test
  void an_import_of_which_a_part_did_not_arrive_is_never_committed() throws Exception {
    try (EventLog log = BROKER.log(prefix)) {
      set("unplaced", "max.message.bytes", "2000");
      log.prepare(
              List.of(
                  new Batch<>(Streams.CHIPS, 3, SampleMarkers.id(1), 0, random.events(5)),
                  new Batch<>(Streams.UNPLACED, 0, SampleMarkers.id(1), 0, List.of(largeEvent()))))
          .append(); // which does not wait for the answers
      for (int attempt = 0; attempt < 2; attempt++) {
        assertThatThrownBy(
                () ->
                    log.commit(
                        SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha")))
            .isInstanceOf(LogUnavailableException.class)
            .hasMessageStartingWith("A record of the event log is larger than the broker takes");
      }
      assertThat(log.snapshot().markers()).isEmpty();
    }
  }

  @Test
  void many_large_events_are_cut_into_records_that_every_broker_takes() {
    try (EventLog log = BROKER.log(prefix)) {
      List<ChipEvent> large = Stream.generate(this::largeEvent).limit(300).toList();
      log.append(new Batch<>(Streams.UNPLACED, 0, SampleMarkers.id(1), 0, large));
      log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
      assertThat(Replayed.of(log.snapshot()).events()).hasSize(300);
    }
  }

  @Test
  void an_import_that_another_program_swept_can_not_be_committed() {
    try (EventLog slow = BROKER.log(prefix);
        EventLog other = BROKER.log(prefix)) {
      slow.append(new Batch<>(Streams.CHIPS, 3, SampleMarkers.id(1), 0, random.events(5)));
      assertThat(other.sweep()).isEqualTo(1);
      assertThatThrownBy(
              () ->
                  slow.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha")))
          .isInstanceOf(LogUnavailableException.class)
          .hasMessage(
              "Another program swept import %s from the event log while it was under way; let one workspace at a time use the topics %s.*, and repeat"
                  .formatted(SampleMarkers.id(1), prefix));
      assertThat(other.snapshot().markers()).isEmpty();
    }
  }

  @Test
  void a_commit_that_was_left_undecided_hides_nothing_from_who_sweeps() throws Exception {
    try (EventLog log = BROKER.log(prefix);
        Producer<byte[], byte[]> died = BROKER.cluster(prefix).producer(prefix + ".commit")) {
      leaveUndecided(died);
      log.append(new Batch<>(Streams.CHIPS, 3, SampleMarkers.id(1), 0, random.events(5)));
      try (EventLog next = BROKER.log(prefix)) {
        assertThat(next.sweep()).isEqualTo(1);
      }
    }
  }

  @Test
  void an_attempt_that_comes_to_light_late_does_not_take_the_place_of_who_wrote() throws Exception {
    try (EventLog log = BROKER.log(prefix);
        Producer<byte[], byte[]> died = BROKER.cluster(prefix).producer(prefix + ".commit")) {
      leaveUndecided(died);
      send(
          JournalEntries.begun(prefix + ".imports", SampleMarkers.id(1), Map.of())); // not seen yet
      log.append(new Batch<>(Streams.CHIPS, 3, SampleMarkers.id(1), 0, random.events(5)));
      log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
      assertThat(Replayed.of(log.snapshot()).events()).hasSize(5);
    }
  }

  /** As of a program that died in the midst of a commit: nobody sees what comes behind. */
  private void leaveUndecided(Producer<byte[], byte[]> commit) throws Exception {
    commit.initTransactions();
    commit.beginTransaction();
    commit.send(new ProducerRecord<>(prefix + ".imports", 0, null, new byte[0])).get();
  }

  private void fill(int events) {
    try (EventLog log = BROKER.log(prefix)) {
      log.append(new Batch<>(Streams.CHIPS, 3, SampleMarkers.id(1), 0, random.events(events)));
      log.commit(SampleMarkers.marker(SampleMarkers.id(1), Optional.empty(), "alpha"));
    }
  }

  /** Random letters, so that compression can't help. */
  private ChipEvent largeEvent() {
    Random letters = new Random(5);
    String text =
        letters
            .ints(5_000, 'a', 'z' + 1)
            .collect(StringBuilder::new, StringBuilder::appendCodePoint, StringBuilder::append)
            .toString();
    ChipEvent any = random.events(1).get(0);
    return new ChipEvent(
        new Subject.Damaged(text, List.of()), any.origin(), any.date(), new Fact.NoLongerListed());
  }

  private void assertRefused(String message) {
    assertThatThrownBy(() -> BROKER.log(prefix).close())
        .isInstanceOf(LogUnavailableException.class)
        .hasMessage(message);
  }

  private void send(ProducerRecord<byte[], byte[]> record) throws Exception {
    try (Producer<byte[], byte[]> producer = BROKER.cluster(prefix).producer()) {
      producer.send(record).get();
    }
  }

  private void delete(String stream) throws Exception {
    try (Admin admin = BROKER.admin()) {
      admin.deleteTopics(List.of(prefix + "." + stream)).all().get();
      BROKER.awaitGone(prefix + "." + stream);
    }
  }

  private void replace(String stream, int partitions) throws Exception {
    delete(stream);
    try (Admin admin = BROKER.admin()) {
      String name = prefix + "." + stream;
      admin.createTopics(List.of(new NewTopic(name, partitions, (short) 1))).all().get();
      while (!admin.listTopics().names().get().contains(name)) {
        Thread.onSpinWait(); // the controller knows it before the broker does
      }
    }
  }

  private void set(String stream, String key, String value) throws Exception {
    try (Admin admin = BROKER.admin()) {
      ConfigResource topic = new ConfigResource(ConfigResource.Type.TOPIC, prefix + "." + stream);
      AlterConfigOp change =
          new AlterConfigOp(new ConfigEntry(key, value), AlterConfigOp.OpType.SET);
      admin.incrementalAlterConfigs(Map.of(topic, List.of(change))).all().get();
      while (!value.equals(
          admin.describeConfigs(List.of(topic)).values().get(topic).get().get(key).value())) {
        Thread.onSpinWait(); // the controller knows it before the broker does
      }
    }
  }
}
