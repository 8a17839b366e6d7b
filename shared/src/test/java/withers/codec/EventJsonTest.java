package withers.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import withers.fact.ChipEvent;
import withers.fact.RandomEvents;
import withers.log.LogDamagedException;

@DisplayNameGeneration(DisplayNameGenerator.ReplaceUnderscores.class)
class EventJsonTest {

  private static final String GOOD = EventJson.write(Samples.FACTS.get(0));

  @Test
  void gives_back_every_event() {
    for (long seed = 0; seed < 100; seed++) {
      for (ChipEvent event : new RandomEvents(seed).events(50)) {
        assertThat(EventJson.read(EventJson.write(event))).as("seed %d", seed).isEqualTo(event);
      }
    }
  }

  @Test
  void tells_the_same_as_the_chunk() {
    for (long seed = 0; seed < 100; seed++) {
      List<ChipEvent> events = new RandomEvents(seed).events(50);
      List<String> fromChunk = new ArrayList<>();
      Streams.CHIPS
          .codec()
          .decode(Streams.CHIPS.codec().encode(events), e -> fromChunk.add(EventJson.write(e)));
      List<ChipEvent> fromJson = fromChunk.stream().map(EventJson::read).toList();
      assertThat(Streams.CHIPS.codec().encode(fromJson))
          .as("seed %d", seed)
          .isEqualTo(Streams.CHIPS.codec().encode(events));
    }
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          "slot":"animal" | "slot":"burrow" | Expected a known slot, but found something else (slot)
          "line":17 | "line":"17" | Expected a whole number, but found something else (line)
          "line":17 | "line":1.5 | Expected a whole number, but found something else (line)
          "line":17, | '' | Expected the field 'line', but found something else (the whole text)
          "line":17 | "line":17,"more":1 | Expected no fields but those of its type and version, but found something else (the whole text)
          "type":"described" | "type":"foretold" | Expected a known fact, but found something else (fact.type)
          2019-05-03 | 2019-02-30 | Expected a day such as 2024-02-29, but found something else (fact.born)
          999000000112233 | 99900000011223X | Expected a chip number, but found something else (subject.number)
          "line":17 | "line":-17 | Expected JSON of the type 'event', but found a value out of range
          "line":17 | "line":17,"line":17 | Expected JSON, but found other text
          """)
  void refuses_what_it_did_not_write(String part, String instead, String message) {
    assertThat(GOOD).contains(part);
    assertThatThrownBy(() -> EventJson.read(GOOD.replace(part, instead)))
        .isInstanceOf(LogDamagedException.class)
        .hasMessage(message);
  }

  @ParameterizedTest
  @CsvSource({"''", "null", "[]", "17", "'{\"type\":\"event\"'", "'{} {}'"})
  void refuses_other_json(String json) {
    assertThatThrownBy(() -> EventJson.read(json)).isInstanceOf(LogDamagedException.class);
  }

  @Test
  void refuses_a_newer_version() {
    String newer =
        GOOD.replace(
            "\"type\":\"described\",\"version\":1", "\"type\":\"described\",\"version\":2");
    assertThatThrownBy(() -> EventJson.read(newer))
        .isInstanceOf(LogDamagedException.class)
        .hasMessage(
            "Expected version 1 to 1 of the fact 'described', but found version 2: a newer program"
                + " wrote it; use that one");
  }
}
