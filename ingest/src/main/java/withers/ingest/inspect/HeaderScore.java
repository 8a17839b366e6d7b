package withers.ingest.inspect;

import java.util.EnumMap;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import withers.ingest.profile.PartyName;

/**
 * How well a header fits a field, in bits: above 0 it speaks for it, below 0 of something else. A
 * header of unknown words says nothing.
 */
final class HeaderScore {

  /** What a header speaks of besides the field tells against it, but less than a match for it. */
  private static final double OF_SOMETHING_ELSE = -0.6;

  private static final double SUBJECT_ALONE = 1.5;
  private static final Set<Concept> SUBJECTS =
      EnumSet.of(
          Concept.CLIENT,
          Concept.CUSTOMER,
          Concept.OWNER,
          Concept.BUYER,
          Concept.ADOPTER,
          Concept.GIVER,
          Concept.PERSON,
          Concept.VET,
          Concept.SECOND,
          Concept.EMERGENCY,
          Concept.REPORT,
          Concept.FROM,
          Concept.TO,
          Concept.HOLDER);
  private static final Set<Concept> PARTS =
      EnumSet.of(
          Concept.NUMBER,
          Concept.PHONE,
          Concept.EMAIL,
          Concept.ADDRESS,
          Concept.POSTCODE,
          Concept.TOWN,
          Concept.REGION,
          Concept.COUNTRY,
          Concept.GIVEN,
          Concept.FAMILY,
          Concept.DATE,
          Concept.TYPE,
          Concept.REASON);

  private final HeaderWords words;
  private final Map<String, Map<Concept, Double>> factors = new HashMap<>();

  HeaderScore(HeaderWords words) {
    this.words = words;
    Lists.rows("field-words.tsv").forEach(row -> factors.put(row.get(0), factors(row.get(1))));
  }

  private static Map<Concept, Double> factors(String list) {
    Map<Concept, Double> factors = new EnumMap<>(Concept.class);
    for (String entry : list.split(" ")) {
      int equals = entry.indexOf('=');
      factors.put(
          Concept.valueOf(entry.substring(0, equals)), Double.valueOf(entry.substring(equals + 1)));
    }
    return factors;
  }

  double of(Layout layout, Field field, Column column) {
    Map<Concept, Double> wanted = wanted(layout, field);
    Set<Concept> said = column.meaning().concepts();
    double score = 0;
    for (Concept concept : said) {
      score += words.weight(concept) * wanted.getOrDefault(concept, OF_SOMETHING_ELSE);
    }
    return score + subjectAlone(field, said);
  }

  private Map<Concept, Double> wanted(Layout layout, Field field) {
    if (field.use() == Use.KEY) {
      return both(list("key"), list("key " + layout.name()));
    }
    return field
        .party()
        .map(party -> both(list("party " + party.word()), list("use " + field.use().word())))
        .orElseGet(() -> list(field.path()));
  }

  private Map<Concept, Double> list(String name) {
    return factors.getOrDefault(name, Map.of());
  }

  private static Map<Concept, Double> both(Map<Concept, Double> one, Map<Concept, Double> two) {
    Map<Concept, Double> both = new EnumMap<>(Concept.class);
    both.putAll(one);
    two.forEach((concept, factor) -> both.merge(concept, factor, Math::max));
    return both;
  }

  /** A column that is called after somebody and nothing else holds their name. */
  private static double subjectAlone(Field field, Set<Concept> said) {
    boolean named =
        field.use() == Use.FULL_NAME || field.use() == Use.ORGANISATION && !field.isMostlyAPerson();
    boolean alone =
        said.stream().anyMatch(SUBJECTS::contains) && said.stream().noneMatch(PARTS::contains);
    return named && alone && field.party().filter(p -> p != PartyName.ORGANISATION).isPresent()
        ? SUBJECT_ALONE
        : 0;
  }
}
