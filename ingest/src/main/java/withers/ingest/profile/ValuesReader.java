package withers.ingest.profile;

import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import withers.source.SourceKind;
import withers.yaml.Fields;
import withers.yaml.Nearest;
import withers.yaml.Problems;
import withers.yaml.YamlMap;
import withers.yaml.YamlText;

/** Reads words: the export's words for ours, and our words for columns that are fixed. */
record ValuesReader(SourceKind kind, Problems problems) {

  private List<ColumnName> wordColumns() {
    return KindColumns.of(kind).columns().stream()
        .filter(column -> column.content() == ColumnName.Content.WORD)
        .toList();
  }

  ValueMaps values(Fields fields) {
    Map<ColumnName, Map<String, String>> words = new EnumMap<>(ColumnName.class);
    for (ColumnName column : wordColumns()) {
      words.put(column, words(column, fields));
    }
    return new ValueMaps(words);
  }

  private Map<String, String> words(ColumnName column, Fields fields) {
    Map<String, String> words = new LinkedHashMap<>(fields.textMap(column.word()));
    fields
        .node(column.word())
        .filter(YamlMap.class::isInstance)
        .map(YamlMap.class::cast)
        .ifPresent(map -> map.entries().forEach(entry -> check(column, entry)));
    return words;
  }

  private void check(ColumnName column, YamlMap.Entry entry) {
    if (entry.value() instanceof YamlText text) {
      check(column, text);
    }
  }

  private void check(ColumnName column, YamlText text) {
    List<String> ours = Vocabulary.words(column);
    if (!ours.isEmpty() && !text.isEmpty() && !ours.contains(text.text())) {
      problems.add(
          text.place(),
          column.word(),
          "Expected one of %s, but found \"%s\"".formatted(String.join(", ", ours), text.text()),
          Nearest.to(text.text(), ours).map("did you mean \"%s\"?"::formatted).orElse(""));
    }
  }

  Map<ColumnName, String> fixed(Fields fields) {
    Map<ColumnName, String> fixed = new EnumMap<>(ColumnName.class);
    for (ColumnName column : wordColumns()) {
      Optional<String> word = fields.optionalText(column.word());
      word.ifPresent(text -> fixed.put(column, text));
      fields
          .node(column.word())
          .filter(YamlText.class::isInstance)
          .ifPresent(node -> check(column, (YamlText) node));
    }
    return fixed;
  }
}
