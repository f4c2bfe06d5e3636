package org.seacairn;

import static com.tngtech.archunit.base.DescribedPredicate.not;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.belongToAnyOf;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideInAnyPackage;
import static com.tngtech.archunit.core.domain.JavaClass.Predicates.resideOutsideOfPackage;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;
import static com.tngtech.archunit.library.dependencies.SlicesRuleDefinition.slices;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import com.tngtech.archunit.ArchConfiguration;
import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaAccess;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.domain.JavaCodeUnitAccess;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.core.importer.resolvers.SelectedClassResolverFromClasspath;
import com.tngtech.archunit.library.GeneralCodingRules;
import java.io.ByteArrayOutputStream;
import java.io.Closeable;
import java.io.FileReader;
import java.io.FileWriter;
import java.io.InputStreamReader;
import java.io.OutputStreamWriter;
import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.Charset;
import java.nio.charset.CharsetDecoder;
import java.nio.charset.CharsetEncoder;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Calendar;
import java.util.Date;
import java.util.Formatter;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** How the house is laid out, and what none of its rooms may do. */
class HouseTest {
    private static final String ROOT = "org.seacairn";

    private static final JavaClasses HOUSE = imported();

    private static JavaClasses imported() {
        // The rules know of no library, and looking up every library class takes seconds.
        ArchConfiguration.get().setClassResolver(SelectedClassResolverFromClasspath.class);
        ArchConfiguration.get().setClassResolverArguments("java");
        return new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .importPackages(ROOT);
    }

    private static final Set<String> FOUNDATION = Set.of("geodesy", "plan", "layer", "grid", "drop");
    private static final Set<String> TO_SCORE = with(with(FOUNDATION, "criterion"), "score");
    private static final Set<String> TO_EXPORT = with(with(with(with(TO_SCORE, "review"), "place"), "trust"), "export");

    /** The design's table: a package, and what it may use beside itself and {@link InputException}. */
    private static Stream<Arguments> rooms() {
        return Stream.of(
                arguments("cli", with(TO_EXPORT, "report")),
                arguments("report", TO_EXPORT),
                arguments("export", without(TO_EXPORT, "export")),
                arguments("review", TO_SCORE),
                arguments("place", TO_SCORE),
                arguments("trust", TO_SCORE),
                arguments("score", with(FOUNDATION, "criterion")),
                arguments("criterion", FOUNDATION),
                arguments("drop", Set.of("plan", "geodesy")),
                arguments("grid", Set.of("geodesy")),
                arguments("layer", Set.of("plan", "geodesy")),
                arguments("plan", Set.of("geodesy")),
                arguments("geodesy", Set.of()));
    }

    @ParameterizedTest(name = "{0} uses only {1}")
    @MethodSource("rooms")
    void arrowsPointDownwards(String room, Set<String> mayUse) {
        List<String> allowed = new ArrayList<>(List.of(ROOT, within(room)));
        mayUse.forEach(other -> allowed.add(within(other)));
        classes().that().resideInAPackage(within(room)).should().onlyDependOnClassesThat(
                resideOutsideOfPackage(ROOT + "..").or(resideInAnyPackage(allowed.toArray(String[]::new))))
                .allowEmptyShould(true) // Some rooms are still to be built.
                .check(HOUSE);
    }

    @Test
    void theRootPackageUsesNoneOfTheRooms() {
        classes().that().resideInAPackage(ROOT).should()
                .onlyDependOnClassesThat(resideInAPackage(ROOT).or(resideOutsideOfPackage(ROOT + "..")))
                .check(HOUSE);
    }

    @Test
    void everyPackageIsInTheTable() {
        Set<String> known = new TreeSet<>(Set.of(ROOT));
        rooms().forEach(row -> known.add(ROOT + "." + row.get()[0]));
        Set<String> unknown = new TreeSet<>();
        HOUSE.forEach(c -> unknown.add(c.getPackageName()));
        unknown.removeAll(known);
        assertEquals(Set.of(), unknown);
    }

    @Test
    void noTwoPackagesUseEachOther() {
        slices().matching(ROOT + ".(*)..").should().beFreeOfCycles().check(HOUSE);
    }

    /** Who may read, write or hold files: the readers, the writers and the command line. */
    private static final String[] KNOWS_FILES = {within("plan"), within("layer"), within("export"), within("report"), within("cli")};

    /** The rest computes on values. It may close what it was given, and name a file in a message. */
    @Test
    void whatComputesKnowsNoFiles() {
        noClasses().that().resideOutsideOfPackages(KNOWS_FILES).should().dependOnClassesThat(
                resideInAnyPackage("java.io..", "java.nio.file..", "java.nio.channels..")
                        .and(not(belongToAnyOf(Closeable.class, Path.class))))
                .check(HOUSE);
        noClasses().that().resideOutsideOfPackages(KNOWS_FILES).should().accessTargetWhere(targets("what a Path does but tell its name",
                access -> access.getTargetOwner().isEquivalentTo(Path.class) && !access.getName().equals("getFileName")))
                .check(HOUSE);
    }

    @Test
    void onlyTheCommandLinePrints() {
        GeneralCodingRules.NO_CLASSES_SHOULD_ACCESS_STANDARD_STREAMS.check(
                HOUSE.that(resideOutsideOfPackage(within("cli"))));
        noClasses().that().resideOutsideOfPackage(within("cli")).should().callMethod(System.class, "exit", int.class)
                .check(HOUSE);
    }

    /** Same inputs, same bytes. Only the command line measures how long a stage took. */
    @Test
    void nothingAsksWhatTimeItIs() {
        noClasses().should().accessTargetWhere(targets("the clock", access ->
                access.getTargetOwner().isEquivalentTo(System.class) && access.getName().equals("currentTimeMillis")
                || access.getTargetOwner().getPackageName().startsWith("java.time") && access.getName().equals("now")))
                .orShould().dependOnClassesThat(belongToAnyOf(Calendar.class, Clock.class))
                .check(HOUSE);
        noClasses().that().resideOutsideOfPackage(within("cli")).should().callMethod(System.class, "nanoTime").check(HOUSE);
        // The library that reads .dbf hands dates over as Date.
        noClasses().that().doNotHaveFullyQualifiedName(ROOT + ".layer.DbfTable").should()
                .dependOnClassesThat(belongToAnyOf(Date.class)).check(HOUSE);
    }

    @Test
    void noNumberFollowsTheLanguageOfTheMachine() {
        noClasses().should().accessTargetWhere(targets("formatting or letter case without a Locale", access ->
                isFormatting(access) && !takes(access, Locale.class))).check(HOUSE);
    }

    private static boolean isFormatting(JavaAccess<?> access) {
        String name = access.getName();
        if (access.getTargetOwner().isEquivalentTo(String.class)) {
            return Set.of("format", "formatted", "toLowerCase", "toUpperCase").contains(name);
        }
        boolean printer = access.getTargetOwner().isAssignableTo(PrintStream.class)
                || access.getTargetOwner().isAssignableTo(PrintWriter.class);
        return printer && Set.of("format", "printf").contains(name)
                || access.getTargetOwner().isEquivalentTo(Formatter.class) && name.equals("<init>")
                || access.getTargetOwner().getName().equals("java.text.DecimalFormat") && name.equals("<init>");
    }

    @Test
    void noTextFollowsTheEncodingOfTheMachine() {
        noClasses().should().accessTargetWhere(targets("bytes made text, or text bytes, without an encoding", access ->
                isDecoding(access) && !takes(access, Charset.class) && !takes(access, CharsetDecoder.class)
                && !takes(access, CharsetEncoder.class))).check(HOUSE);
    }

    private static boolean isDecoding(JavaAccess<?> access) {
        String name = access.getName();
        JavaClass owner = access.getTargetOwner();
        return owner.isEquivalentTo(String.class) && (name.equals("getBytes") || name.equals("<init>") && takes(access, byte[].class))
                || owner.isEquivalentTo(ByteArrayOutputStream.class) && name.equals("toString")
                || name.equals("<init>") && Stream.of(FileReader.class, FileWriter.class, InputStreamReader.class,
                        OutputStreamWriter.class).anyMatch(owner::isEquivalentTo);
    }

    private static boolean takes(JavaAccess<?> access, Class<?> type) {
        return access instanceof JavaCodeUnitAccess<?> call
                && call.getTarget().getRawParameterTypes().stream().anyMatch(parameter -> parameter.isEquivalentTo(type));
    }

    private static DescribedPredicate<JavaAccess<?>> targets(String what, Predicate<JavaAccess<?>> test) {
        return DescribedPredicate.describe(what, test);
    }

    private static String within(String room) {
        return ROOT + "." + room + "..";
    }

    private static Set<String> with(Set<String> rooms, String room) {
        Set<String> more = new TreeSet<>(rooms);
        more.add(room);
        return more;
    }

    private static Set<String> without(Set<String> rooms, String room) {
        Set<String> fewer = new TreeSet<>(rooms);
        fewer.remove(room);
        return fewer;
    }
}
