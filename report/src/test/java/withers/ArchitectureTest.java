package withers;

import static com.tngtech.archunit.lang.conditions.ArchPredicates.are;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.fields;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static withers.CodeUnits.in_module;
import static withers.CodeUnits.of_a_mutable_type;
import static withers.CodeUnits.reads_the_machine_s_clock;
import static withers.CodeUnits.seeds_itself;
import static withers.CodeUnits.stand_in_a_null_marked_package;

import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.Location;
import com.tngtech.archunit.junit.AnalyzeClasses;
import com.tngtech.archunit.junit.ArchTest;
import com.tngtech.archunit.lang.ArchRule;
import java.util.List;
import java.util.regex.Pattern;

/** How the rooms of the project may know each other, and which tools each may use. */
@AnalyzeClasses(packages = "withers", importOptions = ArchitectureTest.MainCodeOnly.class)
class ArchitectureTest {

  // Rooms

  @ArchTest
  static final ArchRule shared_knows_no_other_module =
      noClasses()
          .that(are(in_module("shared")))
          .should()
          .dependOnClassesThat(are(in_module("ingest", "reconcile", "report")));

  @ArchTest
  static final ArchRule ingest_and_reconcile_meet_on_the_log_and_nowhere_else =
      noClasses()
          .that(are(in_module("ingest")))
          .should()
          .dependOnClassesThat(are(in_module("reconcile", "report")))
          .allowEmptyShould(true);

  @ArchTest
  static final ArchRule reconcile_and_ingest_meet_on_the_log_and_nowhere_else =
      noClasses()
          .that(are(in_module("reconcile")))
          .should()
          .dependOnClassesThat(are(in_module("ingest", "report")));

  @ArchTest
  static final ArchRule reconcile_is_pure_but_for_its_commands =
      noClasses()
          .that(are(in_module("reconcile")))
          .and()
          .resideOutsideOfPackage("..cli..")
          .should()
          .dependOnClassesThat()
          .haveNameMatching("java\\.(net\\..*|nio\\.file\\.Files|io\\.(Random|File).*)")
          .as("reconcile opens no file and no connection, but for its commands");

  @ArchTest
  static final ArchRule packages_know_each_other_in_one_direction =
      slices().matching("withers.(**)").should().beFreeOfCycles();

  @ArchTest
  static final ArchRule only_commands_know_commands =
      noClasses()
          .that()
          .resideOutsideOfPackage("..cli..")
          .and()
          .doNotHaveFullyQualifiedName("withers.report.Main")
          .should()
          .dependOnClassesThat()
          .resideInAPackage("withers..cli..");

  // Tools

  @ArchTest
  static final ArchRule Kafka_stays_in_packages_of_that_name =
      only("withers..kafka..", "org.apache.kafka..");

  @ArchTest
  static final ArchRule SQLite_stays_in_packages_of_that_name =
      only("withers..sqlite..", "org.sqlite..");

  @ArchTest
  static final ArchRule PostgreSQL_stays_in_packages_of_that_name =
      only("withers..postgres..", "org.postgresql..");

  @ArchTest
  static final ArchRule SQL_stays_with_its_databases =
      only(List.of("withers..sqlite..", "withers..postgres.."), "java.sql..", "javax.sql..");

  @ArchTest
  static final ArchRule compression_stays_in_the_embedded_log =
      only("withers.log.sqlite..", "com.github.luben.zstd..");

  @ArchTest
  static final ArchRule Jackson_stays_in_the_codec_and_in_what_scripts_read =
      only(
          List.of("withers.codec..", "withers.report.json.."),
          "tools.jackson..",
          "com.fasterxml..");

  @ArchTest
  static final ArchRule YAML_stays_in_its_reader = only("withers.yaml..", "org.snakeyaml..");

  @ArchTest
  static final ArchRule CSV_stays_in_its_reader_and_its_writer =
      only(List.of("withers.ingest.csv..", "withers.report.csv.."), "org.apache.commons.csv..");

  @ArchTest
  static final ArchRule ICU_stays_where_files_are_found_out_and_scripts_transliterated =
      only(List.of("withers.ingest.sniff..", "withers.matching.form.."), "com.ibm.icu..");

  @ArchTest
  static final ArchRule of_ICU_names_need_the_transliterator_alone =
      noClasses()
          .that()
          .resideInAPackage("withers.matching..")
          .should()
          .dependOnClassesThat()
          .haveNameMatching("com\\.ibm\\.icu\\.(?!text\\.Transliterator$).*");

  @ArchTest
  static final ArchRule phonetic_codes_stay_in_the_normal_form =
      only("withers.matching.form..", "org.apache.commons.codec..");

  @ArchTest
  static final ArchRule distances_of_strings_stay_in_matching_and_where_a_word_is_suggested =
      only(List.of("withers.matching..", "withers.yaml.."), "org.apache.commons.text..");

  @ArchTest
  static final ArchRule XLSX_stays_in_its_reader_and_its_writer =
      only(List.of("withers.ingest.xlsx..", "withers.report.xlsx.."), "org.dhatim..");

  @ArchTest
  static final ArchRule archives_stay_in_the_packages_that_unpack =
      only(
          List.of("withers.ingest.pack..", "withers.ingest.xlsx.."),
          "org.apache.commons.compress..");

  @ArchTest
  static final ArchRule mail_stays_in_its_writer =
      only("withers.report.mail..", "jakarta..", "org.eclipse.angus..");

  @ArchTest
  static final ArchRule charts_stay_where_they_are_drawn =
      only("withers.report.chart..", "org.jfree..", "org.apache.batik..", "java.awt..");

  @ArchTest
  static final ArchRule Quartz_stays_in_the_schedule =
      only("withers.report.schedule..", "org.quartz..");

  @ArchTest
  static final ArchRule metrics_stay_where_they_are_watched =
      only(
          "withers.report.watch..",
          "io.micrometer..",
          "io.prometheus..",
          "com.sun.net.httpserver..");

  @ArchTest
  static final ArchRule templates_stay_in_pages = only("withers.report.html..", "gg.jte..");

  @ArchTest
  static final ArchRule the_command_line_library_stays_in_commands =
      noClasses()
          .that()
          .resideOutsideOfPackage("withers..cli..")
          .and()
          .doNotHaveFullyQualifiedName("withers.report.Main")
          .should()
          .dependOnClassesThat()
          .resideInAnyPackage("picocli..", "me.tongfei.progressbar..");

  // Habits

  @ArchTest
  static final ArchRule only_commands_print_and_end_the_program =
      noClasses()
          .that()
          .resideOutsideOfPackage("withers..cli..")
          .and()
          .doNotHaveFullyQualifiedName("withers.report.Main")
          .should()
          .callMethod(System.class, "exit", int.class)
          .orShould()
          .accessField(System.class, "out")
          .orShould()
          .accessField(System.class, "err");

  @ArchTest
  static final ArchRule today_comes_from_a_clock_that_was_handed_in =
      noClasses()
          .that()
          .doNotHaveFullyQualifiedName("withers.report.Main")
          .should()
          .accessTargetWhere(reads_the_machine_s_clock());

  @ArchTest
  static final ArchRule chance_comes_from_a_seed_that_was_handed_in =
      noClasses().should().accessTargetWhere(seeds_itself());

  @ArchTest
  static final ArchRule records_hold_values_that_nobody_can_change =
      fields()
          .that()
          .areDeclaredInClassesThat()
          .areRecords()
          .and()
          .areNotStatic()
          .should()
          .notHaveRawType(of_a_mutable_type());

  @ArchTest
  static final ArchRule every_package_is_null_marked =
      classes().should(stand_in_a_null_marked_package());

  private static ArchRule only(String room, String... tools) {
    return only(List.of(room), tools);
  }

  private static ArchRule only(List<String> rooms, String... tools) {
    return noClasses()
        .that()
        .resideOutsideOfPackages(rooms.toArray(String[]::new))
        .should()
        .dependOnClassesThat()
        .resideInAnyPackage(tools);
  }

  /** Leaves out tests, in folders and in the jar that shares them between modules. */
  static final class MainCodeOnly implements ImportOption {
    private static final Pattern TESTS = Pattern.compile(".*(/test-classes/|-tests\\.jar!).*");

    @Override
    public boolean includes(Location location) {
      return !location.matches(TESTS);
    }
  }
}
