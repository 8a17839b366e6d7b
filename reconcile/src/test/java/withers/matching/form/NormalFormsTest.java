package withers.matching.form;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Locale;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import withers.contact.Contact;
import withers.corpus.Corpus;
import withers.corpus.Mix;
import withers.corpus.PublishedValues;

@DisplayNameGeneration(ReplaceUnderscores.class)
class NormalFormsTest {
  private static final List<String> REGIONS = List.of("GB", "US", "DE", "FR", "ZZ");

  /**
   * What breaks readers: signs, marks, joiners, halves of surrogate pairs, words with a meaning.
   */
  private static final List<String> PIECES =
      List.of(
          "Ann",
          "van der",
          "&",
          "c/o",
          ",",
          ";",
          "(",
          ")",
          "\"",
          "'",
          "O'",
          "Mc",
          "JR",
          "Jr.",
          "née",
          "Familie",
          "Ltd",
          "Dr.",
          "-",
          "--",
          ".",
          "\u0301",
          "\u200d",
          "\ud83d",
          "\ud83d\ude00",
          "\u0000",
          "\t",
          "\u00a0",
          "ß",
          "İ",
          "ŉ",
          "ﬃ",
          "김민수",
          "欧阳小红",
          "محمد",
          "สมชาย",
          "+",
          "+44",
          "0",
          "07700 900123",
          "x12",
          "7.7E+9",
          "@",
          "a@b",
          "a+b@c.d",
          "mailto:",
          "<",
          ">",
          "#4",
          "12",
          "12a",
          "2/7",
          "12-14",
          "Flat",
          "St",
          "Str.",
          "PO Box",
          "ZL1 2AB",
          "28411",
          "/",
          "\\",
          "1".repeat(300),
          "x".repeat(300),
          "_",
          "|",
          "[",
          "]",
          "«",
          "„",
          "º",
          "½",
          "Ⅳ",
          "٣");

  private final NormalForms forms = new NormalForms("GB");

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3})
  void nothing_that_is_written_stops_it_and_all_of_it_reads_alike_twice(long seed) {
    Random random = new Random(seed);
    for (int i = 0; i < 3000; i++) {
      Contact contact = contact(random);
      NormalForms fresh = new NormalForms(REGIONS.get(i % REGIONS.size()));
      assertThat(fresh.of(contact)).as("seed %d, contact %d", seed, i).isEqualTo(fresh.of(contact));
    }
  }

  private static Contact contact(Random random) {
    boolean columns = random.nextBoolean();
    return new Contact(
        columns ? "" : text(random),
        columns ? text(random) : "",
        columns ? text(random) : "",
        List.of(text(random), text(random)),
        List.of(text(random)),
        List.of(text(random), text(random), text(random)),
        text(random),
        text(random),
        text(random),
        text(random));
  }

  private static String text(Random random) {
    return IntStream.range(0, random.nextInt(7))
        .mapToObj(i -> PIECES.get(random.nextInt(PIECES.size())))
        .collect(Collectors.joining(random.nextInt(4) == 0 ? "" : " "));
  }

  /** A word once folded is folded: reading what was read changes nothing. */
  @Test
  void folding_twice_is_folding_once() {
    new Corpus(Mix.TUNING)
        .pairs(2000)
        .flatMap(pair -> Stream.of(pair.one(), pair.other()))
        .map(contact -> Fold.of(contact.fullName()))
        .forEach(folded -> assertThat(Fold.of(folded)).isEqualTo(folded));
  }

  @Test
  void all_threads_read_alike() {
    List<Contact> contacts = new Corpus(Mix.TUNING).pairs(1000).map(pair -> pair.other()).toList();
    NormalForms alone = new NormalForms("GB");

    assertThat(contacts.parallelStream().map(forms::of).toList())
        .isEqualTo(contacts.stream().map(alone::of).toList());
  }

  /** Names in the scripts of the world, each of them a common one (memory, no source). */
  @ParameterizedTest
  @CsvSource({
    "李小龙",
    "محمد علي",
    "Ἀχιλλεύς",
    "דוד כהן",
    "สมชาย ใจดี",
    "კახა",
    "Արմեն Պետրոսյան",
    "अमित शर्मा",
    "ਗੁਰਪ੍ਰੀਤ",
    "তানিয়া",
    "சுரேஷ்",
    "సురేష్",
    "ಸುರೇಶ್",
    "സുരേഷ്",
    "ගයාන්",
    "ທ້າວ",
    "မောင်",
    "សុខ",
    "አበበ",
    "ひらがな",
    "カタカナ",
    "김민수",
    "Владимир",
    "Þórr",
    "ᏣᎳᎩ",
    "ᠮᠣᠩᠭᠣᠯ",
    "བསྟན",
    "ⵎⵓⵃⴰⵎⵎⴷ",
    "𞤀𞤁𞤂",
    "ߒߞߏ"
  })
  void any_script_survives(String name) {
    NormalForm form = forms.of(named(name));

    assertThat(form.name()).isNotEmpty();
    assertThat(form.names()).hasSize(1);
  }

  @ParameterizedTest(name = "{0} = {1}")
  @CsvSource({
    "Voss, VOSS",
    "Zoë, zoe",
    "Zoe\u0308, Zo\u00eb",
    "Weiß, WEISS",
    "Müller, Mueller",
    "Jørgen, Joergen",
    "ΝΙΚΟΣ, Νίκος",
    "ＡＤＡ, ada",
    "O’Malley, O'MALLEY"
  })
  void words_are_equal_without_case_accents_and_umlauts(String one, String other) {
    assertThat(forms.of(named(one)).name()).isEqualTo(forms.of(named(other)).name()).isNotEmpty();
  }

  @ParameterizedTest(name = "{0} sounds like {1}")
  @CsvSource({
    "Iwanow, Ivanov",
    "Ivanoff, Ivanov",
    "Kusnezow, Kuznetsov",
    "Lindqvist, Lindkvist",
    "Schewtschenko, Shevchenko",
    "Jusuf, Yusuf",
    "Juri, Yuri",
    "Fillip, Philip",
    "Sokolow, Соколов"
  })
  void spellings_in_other_languages_letters_sound_alike(String one, String other) {
    assertThat(word(one).sound()).isEqualTo(word(other).sound());
  }

  @ParameterizedTest(name = "{0} is married to {1}")
  @CsvSource({
    "Zieliński, Zielińska",
    "Volkov, Volkova",
    "Novák, Nováková",
    "Papadopoulos, Papadopoulou",
    "Dostojewski, Dostojewskaja",
    "Kazlauskas, Kazlauskienė"
  })
  void both_forms_of_a_family_name_have_one_stem(String his, String hers) {
    assertThat(word(his).stem()).isEqualTo(word(hers).stem());
  }

  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource({
    "Bob, Robert",
    "Paco, Francisco",
    "Саша, Aleksandr",
    "Kasia, Katarzyna",
    "Liz, Elisabeth",
    "Beppe, Giuseppe"
  })
  void short_forms_stand_for_the_name(String one, String other) {
    assertThat(word(one).given().standForOneName(word(other).given())).isTrue();
    assertThat(word(one).given().spellOneName(word(other).given())).isFalse();
  }

  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource({
    "Mohammed, Muhamad",
    "Catherine, Katherine",
    "محمد, Mohammed",
    "Keeva, Caoimhe",
    "Jon, John"
  })
  void spellings_are_of_one_name(String one, String other) {
    assertThat(word(one).given().standForOneName(word(other).given())).isTrue();
  }

  @ParameterizedTest(name = "{0}, {1}")
  @CsvSource({
    "Bob, Bill",
    "Robert, Roberta",
    "Jan, Janina",
    "Anne, Alan",
    "Emily, Emmanuel",
    "Harold, Henry"
  })
  void other_names_stand_for_no_common_one(String one, String other) {
    assertThat(word(one).given().translateOneName(word(other).given())).isFalse();
  }

  private NameWord word(String name) {
    Reading reading = forms.of(named(name)).names().get(0).straight();
    return reading.either().isEmpty() ? reading.joinedFamily() : reading.either().get(0);
  }

  /** US National Archives, and H. J. Postel's paper: {@code published-values.txt}. */
  @Test
  void phonetic_codes_are_the_published_ones() {
    PublishedValues.of("soundex")
        .forEach(row -> assertThat(word(row.get(0)).soundex()).isEqualTo(row.get(1)));
    PublishedValues.of("cologne")
        .forEach(row -> assertThat(joined(row.get(0)).cologne()).isEqualTo(row.get(1)));
  }

  /** A hyphen separates for us, and says nothing to Cologne phonetics. */
  private NameWord joined(String name) {
    return word(name.replace("-", ""));
  }

  @Test
  void the_machine_s_language_plays_no_part() {
    Locale usual = Locale.getDefault();
    try {
      Locale.setDefault(Locale.forLanguageTag("tr"));
      assertThat(forms.of(named("KIMI")).name()).isEqualTo("kimi");
    } finally {
      Locale.setDefault(usual);
    }
  }

  @Test
  void the_text_form_shows_no_details() {
    NormalForm form =
        forms.of(
            new Contact(
                "Ada Stone",
                "",
                "",
                List.of("07700 900123"),
                List.of("ada@example.org"),
                List.of("12 Mill Lane"),
                "ZL1",
                "Saltmere",
                "",
                ""));
    PersonName name = form.names().get(0);

    assertThat(
            Stream.of(
                    form,
                    name,
                    name.straight(),
                    name.straight().joinedFamily(),
                    form.phones().get(0),
                    form.emails().get(0),
                    form.address().orElseThrow())
                .map(Object::toString))
        .allMatch(text -> text.endsWith("[details withheld]"));
  }

  @Test
  void the_table_of_given_names_is_wide() {
    assertThat(NameTable.GIVEN.size()).isGreaterThan(10_000);
  }

  private static Contact named(String name) {
    return new Contact(name, "", "", List.of(), List.of(), List.of(), "", "", "", "");
  }
}
