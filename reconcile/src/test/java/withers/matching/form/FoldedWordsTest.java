package withers.matching.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import withers.contact.Ascii;

/**
 * What the words of our lists fold to is written down, and is what the transforms make of them (the
 * transforms of Unicode's CLDR, as ICU brings them).
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class FoldedWordsTest {

  @Test
  void every_word_of_the_lists_that_is_not_of_ascii_is_written_down_as_the_transforms_fold_it()
      throws IOException {
    List<List<String>> made = words().stream().map(FoldedWordsTest::line).toList();
    Path written = Files.write(Path.of("target", "folded-words.txt"), text(made));

    assertThat(WordFile.FOLDED_WORDS.lines())
        .as("lists have changed: copy the lines of %s", written)
        .isEqualTo(made);
  }

  private static List<String> line(String word) {
    String folded = Fold.transformed(word);
    return folded.isEmpty() ? List.of(word) : List.of(word, folded);
  }

  private static List<String> text(List<List<String>> lines) {
    return lines.stream().map(line -> String.join(" ", line)).toList();
  }

  private static Set<String> words() {
    Set<String> words = new TreeSet<>();
    Stream.of(WordFile.values())
        .filter(file -> file != WordFile.FOLDED_WORDS)
        .flatMap(file -> file.lines().stream())
        .flatMap(line -> line.stream())
        .flatMap(entry -> Stream.of(entry.split("_")))
        .filter(word -> !Ascii.isAscii(word))
        .forEach(words::add);
    return words;
  }
}
