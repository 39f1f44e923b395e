package tramontane.acoustics;

import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.classes;
import static com.tngtech.archunit.lang.syntax.ArchRuleDefinition.noClasses;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import org.junit.jupiter.api.Test;

class ArchitectureTest {

    private static final JavaClasses CLASSES = new ClassFileImporter().withImportOption(new ImportOption.DoNotIncludeTests())
            .importPackages("tramontane");

    @Test
    void acousticsKnowsOfOtherBundlesOnlyWhatTheyExport() {
        classes().that().resideInAPackage("tramontane.acoustics..").should().onlyDependOnClassesThat()
                .resideInAnyPackage("java..", "tramontane.acoustics..", "tramontane.selection", "tramontane.analysis", "tramontane.model..",
                        "tramontane.physics..", "org.hipparchus..", "org.osgi..").check(CLASSES);
    }

    /** What is recorded is read and analysed without a design. */
    @Test
    void recordingsKnowPhysicsOnly() {
        classes().that().resideInAPackage("tramontane.acoustics.recording..").should().onlyDependOnClassesThat()
                .resideInAnyPackage("java..", "tramontane.acoustics.recording..", "tramontane.physics..", "org.hipparchus..", "org.osgi..")
                .allowEmptyShould(true).check(CLASSES);
    }

    /** Choices need not be loaded; what would need them is a component of its own. */
    @Test
    void onlyBoundsKnowOfChoices() {
        noClasses().that().resideInAPackage("tramontane.acoustics..").and().haveNameNotMatching(".*\\.(Noise|Level|Power)Bound(\\$.*)?")
                .should().dependOnClassesThat().resideInAPackage("tramontane.selection..").check(CLASSES);
        noClasses().that().resideInAPackage("tramontane.acoustics..").and().haveNameNotMatching(".*\\.(Noise|Level|Power)Bound(\\$.*)?")
                .should().dependOnClassesThat().haveNameMatching(".*\\.(Noise|Level|Power)Bound(\\$.*)?").check(CLASSES);
    }

    @Test
    void nobodyElseUsesWhatIsInside() {
        noClasses().that().resideOutsideOfPackage("tramontane.acoustics..").should().dependOnClassesThat()
                .resideInAPackage("tramontane.acoustics.internal..").check(CLASSES);
    }

    @Test
    void theOldNeedNothingOfIt() {
        noClasses().that().resideInAnyPackage("tramontane.model..", "tramontane.physics..", "tramontane.analysis..", "tramontane.airflow..",
                "tramontane.selection..").should().dependOnClassesThat().resideInAPackage("tramontane.acoustics..").check(CLASSES);
    }
}
