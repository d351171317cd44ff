# Every rule: its short name, why it holds at this visit (numbers that a finding does not have are left out),
# the rule with its default limits and their source, and what to do and say.

## Danger signs

rule-danger-general-name = Danger sign
rule-danger-general-why = Danger sign seen{ $signs ->
        [none] { "" }
       *[other] : { $signs }
    }.
rule-danger-general-explain = Any of: cannot drink or breastfeed, vomits everything, fits, very sleepy or hard to wake, unconscious, trouble breathing; from 2 months also moves only when touched. Source: IMCI general danger signs.
rule-danger-general-do = Leave for the clinic at once and stay until they go. Keep the child warm; go on breastfeeding if able and wide awake. Fits or unconscious: on the side, nothing in the mouth. Nothing else first.

rule-danger-young-infant-name = Danger sign, under 2 months
rule-danger-young-infant-why = Danger sign in a baby under 2 months{ $signs ->
        [none] { "" }
       *[other] : { $signs }
    }.
rule-danger-young-infant-explain = Under 2 months, any of: does not feed well, fits, fast breathing (60 or more a minute, counted twice), chest drawn in, hot (37.5 °C or more) or cold (under 35.5 °C), moves only when touched or not at all. Source: IMCI young infant, urgent referral (from memory).
rule-danger-young-infant-do = Leave for the clinic at once and stay until they go. Keep the baby warm, skin to skin; go on breastfeeding if able.

rule-danger-other-name = Sign of illness
rule-danger-other-why = Sign seen{ $signs ->
        [none] { "" }
       *[other] : { $signs }
    }.
rule-danger-other-explain = Stridor when calm, sunken eyes with a very slow skin pinch, stiff neck, and from 2 months chest drawn in: at once. Blood in stool; weak cry, floppy, weak suck, hanging eyelids; from 2 months fast breathing (50 or more a minute, from 12 months 40): today. From 2 months hot or cold: today under 3 months, else within 2 days; not feeding well: within 2 days. Source: IMCI (from memory); where other signs were added, our own choice.
rule-danger-other-do = Refer. Where malaria is local and the child is hot: today. Go on breastfeeding and offering drinks on the way.

rule-oedema-both-feet-name = Both feet swollen
rule-oedema-both-feet-why = Both feet are swollen: a dent stays after pressing.
rule-oedema-both-feet-explain = Swelling of both feet that keeps the dent of a thumb, at any age, even if the weight looks normal. Source: WHO and UNICEF 2009; WHO 2023 (from memory).
rule-oedema-both-feet-do = Refer to nutrition treatment today, with a written note. Agree how they travel. Go on breastfeeding.

## Food reactions

rule-reaction-severe-name = Severe food reaction
rule-reaction-severe-why = Severe reaction{ $foods ->
        [none] { "" }
       *[other] { " " }to { $foods }
    }{ $signs ->
        [none] { "" }
       *[other] : { $signs }
    }{ $minutes ->
        [none] { "" }
       *[other] , after { $minutes ->
            [one] { $minutes } minute
           *[other] { $minutes } minutes
        }
    }.
rule-reaction-severe-explain = A sign of breathing, throat or collapse at any time; or a skin sign and a gut sign together within 4 hours of the food, or at an unknown time. Source: criteria of the World Allergy Organization 2019/2020 and of NIAID/FAAN 2006 in plain words; the class is our own choice.
rule-reaction-severe-do = Emergency: call. Stop the food. Nothing by mouth until breathing is easy and the child is wide awake; then breastfeed. Medicine prescribed for this child: help the family use it now.

rule-reaction-spreading-name = Food reaction that spreads
rule-reaction-spreading-why = Reaction{ $foods ->
        [none] { "" }
       *[other] { " " }to { $foods }
    }{ $signs ->
        [none] { "" }
       *[other] : { $signs }
    }{ $minutes ->
        [none] { "" }
       *[other] , after { $minutes ->
            [one] { $minutes } minute
           *[other] { $minutes } minutes
        }
    }.
rule-reaction-spreading-explain = Hives all over, swollen face or repeated vomiting alone, at any time; or a reaction whose signs were not recorded. Source: as for the severe reaction; that unknown signs count is our own choice.
rule-reaction-spreading-do = Refer today. Stop the food until a clinician says it is safe. If breathing, throat or wakefulness change: emergency.

rule-reaction-mild-name = Mild food reaction
rule-reaction-mild-why = Mild reaction{ $foods ->
        [none] { "" }
       *[other] { " " }to { $foods }
    }{ $signs ->
        [none] { "" }
       *[other] : { $signs }
    }{ $minutes ->
        [none] { "" }
       *[other] , after { $minutes ->
            [one] { $minutes } minute
           *[other] { $minutes } minutes
        }
    }.
rule-reaction-mild-explain = Any other reaction: rash round the mouth, eczema that got worse, one vomit, loose stools. Within 7 days if the food is a common allergen, else within 14. Source: as for the severe reaction; the classes are our own choice.
rule-reaction-mild-do = Stop the food until a health worker says it is safe. Write down how long after the food it began. Other foods go on.

rule-reaction-given-again-name = Food on hold given again
rule-reaction-given-again-why = Given again while on hold{ $date ->
        [none] { "" }
       *[other] { " " }since { $date }
    }{ $foods ->
        [none] { "" }
       *[other] : { $foods }
    }.
rule-reaction-given-again-explain = A food on hold since an earlier visit was offered and nobody allowed to do so lifted the hold. Within 2 days if a reaction since then was severe or spreading, else within 7. Our own choice.
rule-reaction-given-again-do = Remind without blame: this food waits until a health worker says it is safe. Tell your supervisor.

rule-feeding-swallow-trouble-name = Trouble swallowing
rule-feeding-swallow-trouble-why = Trouble while swallowing{ $signs ->
        [none] { "" }
       *[other] : { $signs }
    }.
rule-feeding-swallow-trouble-explain = Chokes, coughs, goes blue or sounds wet while feeding, more than once. Emergency if blue, else within 7 days. Common practice.
rule-feeding-swallow-trouble-do = Do not move to a thicker texture. The clinic should watch a feed. Choking now and cannot cry or cough: begin choking first aid as you were trained, and call.

## Growth

rule-weight-very-low-name = Weight very low for age
rule-weight-very-low-why = Weight very low for age{ $weight ->
        [none] { "" }
       *[other] : { $weight }
    }{ $waz ->
        [none] { "" }
       *[other] , { $waz }
    }{ $limit ->
        [none] { "" }
       *[other] , below { $limit }
    }.
rule-weight-very-low-explain = Weight for age below −3. Today under 6 months or if below −6 and measured again, else within 2 days. Source: severe underweight, WHO 2006 (from memory); the class is our own choice.
rule-weight-very-low-do = Look for danger signs and swollen feet, measure again, and refer for assessment. Say: the weight tells us that more help is needed; it is nobody’s fault.

rule-weight-low-name = Weight low for age
rule-weight-low-why = Weight low for age{ $weight ->
        [none] { "" }
       *[other] : { $weight }
    }{ $waz ->
        [none] { "" }
       *[other] , { $waz }
    }{ $limit ->
        [none] { "" }
       *[other] , below { $limit }
    }.
rule-weight-low-explain = Weight for age from −3 to below −2. Within 7 days under 6 months, else within 14. Source: underweight, WHO 2006; under 6 months a sign of risk, WHO 2023 (both from memory).
rule-weight-low-do = Go through feeding together and weigh again. Clinic as the local protocol says.

rule-wasting-severe-name = Much too thin
rule-wasting-severe-why = Much too thin{ $muac ->
        [none] { "" }
       *[other] : arm { $muac }
    }{ $wlz ->
        [none] { "" }
       *[other] , weight for length { $wlz }
    }{ $limit ->
        [none] { "" }
       *[other] , below { $limit }
    }.
rule-wasting-severe-explain = From 6 months: upper arm under 115 mm or weight for length below −3. Source: WHO and UNICEF 2009; WHO 2023 (from memory).
rule-wasting-severe-do = Refer to nutrition treatment today, with a written note. Agree how they travel. Go on breastfeeding; offer food little and often. Say: the arm tells us that more help is needed than food at home.

rule-wasting-moderate-name = Too thin
rule-wasting-moderate-why = Too thin{ $muac ->
        [none] { "" }
       *[other] : arm { $muac }
    }{ $wlz ->
        [none] { "" }
       *[other] , weight for length { $wlz }
    }{ $limit ->
        [none] { "" }
       *[other] , below { $limit }
    }.
rule-wasting-moderate-explain = From 6 months: upper arm 115 to 124 mm or weight for length from −3 to below −2. Source: WHO 2013 and 2023, IMCI (from memory); 7 days instead of 30 because every child here is under 2 years: our own choice.
rule-wasting-moderate-do = Refer to a supplementary food service if there is one. Go through feeding together: one more meal, thicker, with fish, egg or beans.

rule-wasting-young-name = Too thin, under 6 months
rule-wasting-young-why = Too thin for a baby under 6 months{ $muac ->
        [none] { "" }
       *[other] : arm { $muac }
    }{ $wlz ->
        [none] { "" }
       *[other] , weight for length { $wlz }
    }{ $limit ->
        [none] { "" }
       *[other] , below { $limit }
    }.
rule-wasting-young-explain = Under 6 months: weight for length below −3 today, from −3 to below −2 within 2 days; from 6 weeks an upper arm under 110 mm within 2 days. Source: WHO 2023 (from memory, not checked word for word).
rule-wasting-young-do = Watch a feed. Mother and baby both need to be seen. Breast milk goes on, never replaced because of a number.

rule-weight-loss-name = Weight lost
rule-weight-loss-why = Weight lost{ $lost ->
        [none] { "" }
       *[other] : { $lost }
    }{ $loss_percent ->
        [none] { "" }
       *[other] { " " }({ $loss_percent })
    }{ $interval_days ->
        [none] { "" }
       *[other] { " " }in { $interval_days ->
            [one] { $interval_days } day
           *[other] { $interval_days } days
        }
    }.
rule-weight-loss-explain = Lost more than the error of measuring (100 g) between two weights 5 to 122 days apart, the first from 14 days of age. Under 6 months today; from 6 months within 2 days for 5 % or more, else within 7. Source: WHO 2023 for under 6 months (from memory); 5 % common practice; 100 g from the WHO growth study 2004 (from memory).
rule-weight-loss-do = Weigh again on the same scale. Ask about illness, milk and food. Under 6 months, or when much was lost, send the family to the clinic as soon as this page says. Nobody is to blame.

rule-weight-static-name = No weight gained
rule-weight-static-why = No weight gained{ $interval_days ->
        [none] { "" }
       *[other] { " " }in { $interval_days ->
            [one] { $interval_days } day
           *[other] { $interval_days } days
        }
    }{ $lost ->
        [none] { "" }
       *[other] { " " }(down { $lost })
    }.
rule-weight-static-explain = No gain between two weights: from 7 days apart under 6 months, 28 days at 6 to 11 months, 56 days from 12 months. Within 2 days under 6 months, else within 14. Source: failure to gain, WHO 2023 (from memory); the times are common practice.
rule-weight-static-do = Weigh again on the same scale. Ask about illness, milk and food. Add a meal or a feed and weigh again in time.

rule-weight-slow-gain-name = Slow gain
rule-weight-slow-gain-why = Gained little{ $gain ->
        [none] { "" }
       *[other] : { $gain }
    }{ $interval_days ->
        [none] { "" }
       *[other] { " " }in { $interval_days ->
            [one] { $interval_days } day
           *[other] { $interval_days } days
        }
    }{ $floor ->
        [none] { "" }
       *[other] , hoped for at least { $floor }
    }.
rule-weight-slow-gain-explain = Gained less than the slowest 5 in 100 healthy babies of that age and sex, up to 7 months. Within 7 days under 6 months, else within 14. Source: WHO 2009 weight velocity, 1-month increments, 5th centile.
rule-weight-slow-gain-do = Watch a feed and ask how often. Weigh again in time. Praise what goes well.

rule-weight-drop-name = Weight line fell
rule-weight-drop-why = The weight line fell{ $z_change ->
        [none] { "" }
       *[other] { " " }by { $z_change }
    }{ $z_before ->
        [none] { "" }
       *[other] { " " }from { $z_before }
    }{ $waz ->
        [none] { "" }
       *[other] { " " }to { $waz }
    }{ $interval_days ->
        [none] { "" }
       *[other] { " " }in { $interval_days ->
            [one] { $interval_days } day
           *[other] { $interval_days } days
        }
    }.
rule-weight-drop-explain = Weight for age fell by 1.00 or more, or by 0.67 or more, between two visits 28 to 122 days apart. By 1.00: within 2 days under 6 months, else within 7; by 0.67: within 7, else within 14. Source: 0.67 is one space of a chart with nine lines; the idea is NICE NG75 2017; its use between two visits is our own choice.
rule-weight-drop-do = Go through feeding and illness together. Show both points on the chart.

rule-weight-drift-name = Weight line fell since birth
rule-weight-drift-why = The weight line has fallen since the start{ $z_before ->
        [none] { "" }
       *[other] , from { $z_before }
    }{ $waz ->
        [none] { "" }
       *[other] { " " }to { $waz }
    }.
rule-weight-drift-explain = From 6 weeks: weight for age has fallen from the birth weight (or the first weight from 4 weeks) by 0.67 if it began below −1.34, by 1.33 in the middle, by 2.00 if above 1.34. Within 14 days. Source: NICE NG75 2017, one, two or three spaces of the chart; in z our own choice.
rule-weight-drift-do = Show the first and the last point on the chart. Go through feeding together.

rule-birth-weight-not-regained-name = Birth weight not regained
rule-birth-weight-not-regained-why = Below birth weight{ $weight ->
        [none] { "" }
       *[other] : { $weight }
    }{ $birth_weight ->
        [none] { "" }
       *[other] , born with { $birth_weight }
    }{ $loss_percent ->
        [none] { "" }
       *[other] { " " }(down { $loss_percent })
    }.
rule-birth-weight-not-regained-explain = In the first 2 weeks more than 10 % under birth weight: today. From 14 to 20 days under birth weight: within 2 days. From 21 to 42 days: today. Source: 10 % and 3 weeks NICE NG75 2017; 14 days common practice.
rule-birth-weight-not-regained-do = Watch a feed. Send the family to the clinic as soon as this page says. Feed often, day and night.

rule-birth-low-name = Born small or early
rule-birth-low-why = Born small or early{ $birth_weight ->
        [none] { "" }
       *[other] : { $birth_weight }
    }{ $gestation_days ->
        [none] { "" }
       *[other] , after { $gestation_days }
    }.
rule-birth-low-explain = Birth weight under 2,500 g or before 37 weeks, until 62 days of age and without a clinic’s plan. Under 1,500 g or before 32 weeks within 2 days, else within 7. Source: WHO definitions of low birth weight (from memory); the days are our own choice.
rule-birth-low-do = Confirm that the clinic has a plan. Warmth, skin to skin, frequent feeds. From 2 months ask the clinic about iron drops.

rule-length-low-name = Short for age
rule-length-low-why = Short for age{ $length ->
        [none] { "" }
       *[other] : { $length }
    }{ $laz ->
        [none] { "" }
       *[other] , { $laz }
    }{ $limit ->
        [none] { "" }
       *[other] , below { $limit }
    }.
rule-length-low-explain = Length for age below −3 within 14 days; from −3 to below −2 at the next routine visit. Source: stunting, WHO 2006 (from memory); the classes are our own choice.
rule-length-low-do = Go through food and illness. It is not an emergency, and parents’ height counts too.

rule-weight-high-name = Weight high
rule-weight-high-why = Weight high{ $wlz ->
        [none] { "" }
       *[other] { " " }for length: { $wlz }
    }{ $waz ->
        [none] { "" }
       *[other] , weight for age { $waz }
    }.
rule-weight-high-explain = Weight for length above 3 within 14 days; above 2 up to 3 at the next routine visit. Without a length, weight for age above 2: measure the length. Source: WHO, under 5 years (from memory); that a clinician looks above 3 is common practice.
rule-weight-high-do = Measure again. Talk about sweet drinks and about letting the child decide when it is enough. Never cut food or milk.

## Feeding

rule-solids-early-name = Food before 6 months
rule-solids-early-why = Food besides milk before the start age{ $date ->
        [none] { "" }
       *[other] , since { $date }
    }{ $foods ->
        [none] { "" }
       *[other] : { $foods }
    }.
rule-solids-early-explain = Solid food before 180 days of age without a clinic’s plan. Before 17 weeks within 7 days, later within 14. Source: WHO 2023, complementary feeding, 6 months (180 days); 17 weeks ESPGHAN 2017.
rule-solids-early-do = Explain without blame: breast milk has all that a baby needs until 6 months. Keep breastfeeding, look at growth. Clinic if the mother worries about her milk.

rule-liquids-early-name = Other drinks before 6 months
rule-liquids-early-why = Drinks besides milk before 6 months.
rule-liquids-early-explain = Water, juice, tea, a sweet drink or another non-milk drink before 180 days; rehydration salts and medicine do not count. Within 14 days. Source: WHO and UNICEF 2021 indicators (from memory).
rule-liquids-early-do = Breast milk has enough water, also when it is hot. Offer the breast more often.

rule-milk-animal-early-name = Animal milk before 6 months
rule-milk-animal-early-why = Animal milk as a drink before 6 months.
rule-milk-animal-early-explain = Animal milk as a drink before 6 months without a clinic’s plan; formula is different. Within 7 days. Common practice.
rule-milk-animal-early-do = Clinic: help with breastfeeding, or formula. Never dilute milk on one’s own.

rule-solids-late-name = No food besides milk yet
rule-solids-late-why = No food besides milk yet{ $stage_months ->
        [none] { "" }
       *[other] { " " }at { $stage_months ->
            [one] { $stage_months } month
           *[other] { $stage_months } months
        }
    }.
rule-solids-late-explain = No solid food begun: from 6 months and 14 days within 14 days, from 7 months (or 8 months of age whatever the correction) within 7. The first step waits when the baby is not ready. Source: WHO 2023, start at 6 months; the ages are our own choice.
rule-solids-late-do = Look at the signs that the baby is ready, and begin: thick, smooth, 2 to 3 tablespoons, after a breastfeed. From 8 months also ask the clinic.

rule-texture-behind-name = Texture behind
rule-texture-behind-why = Texture is behind{ $texture ->
        [none] { "" }
       *[other] : eats at best { $texture }
    }{ $texture_expected ->
        [none] { "" }
       *[other] , not even { $texture_expected }
    }{ $stage_months ->
        [none] { "" }
       *[other] , at { $stage_months ->
            [one] { $stage_months } month
           *[other] { $stage_months } months
        }
    }.
rule-texture-behind-explain = Best texture taken so far: no soft lumps by 8 months (next visit), 9 (14 days), 10 (7 days); no chopped food by 11 months (next visit), 12 (14 days); no family food by 15 months (14 days). Source: Northstone 2001 and Coulthard 2009 for lumps by 9 to 10 months (they show a link, not a cause); the rest is our own choice.
rule-texture-behind-do = Offer the next texture at 1 or 2 meals a day. Go slowly, sit beside, watch for choking. From 10 months and only smooth: the clinic looks at swallowing.

rule-texture-watery-name = Food too watery
rule-texture-watery-why = Usual food is watery: it runs off the spoon.
rule-texture-watery-explain = From 6 months, food begun, usual texture watery. Within 14 days. Source: PAHO/WHO 2003, at least 0.8 kcal a gram.
rule-texture-watery-do = Thicken it until it stays on the spoon. Stir in groundnut paste, fish powder or mashed beans.

rule-meals-few-name = Few meals
rule-meals-few-why = Few meals yesterday{ $meals ->
        [none] { "" }
       *[other] : { $meals }
    }{ $milk_feeds ->
        [none] { "" }
       *[other] , milk feeds { $milk_feeds }
    }{ $least ->
        [none] { "" }
       *[other] , hoped for at least { $least }
    }.
rule-meals-few-explain = Breastfed: under 2 meals at 6 to 8 months, under 3 from 9 months. Not breastfed: meals and milk feeds together under 4. Within 14 days; no meal at all while ill, or twice in a row, within 7. Source: WHO and UNICEF 2021 indicators (from memory); WHO 2009 model chapter.
rule-meals-few-do = Add a meal or a snack. Smaller and more often is fine.

rule-milk-few-name = Few milk feeds
rule-milk-few-why = Not breastfed, few milk feeds yesterday{ $milk_feeds ->
        [none] { "" }
       *[other] : { $milk_feeds }
    }{ $least ->
        [none] { "" }
       *[other] , hoped for at least { $least }
    }.
rule-milk-few-explain = Not breastfed: under 6 months 2 or fewer milk feeds today, 3 to 5 within 2 days; from 6 months under 2, within 7 days to 11 months, then 14. Source: from 6 months WHO and UNICEF 2021 (from memory); under 6 months about 6 to 8 feeds (from memory), the limits our own choice.
rule-milk-few-do = Ask which milk, how it is prepared, and that it is never diluted. Help to breastfeed again if wanted. Clinic if there is no milk.

rule-diversity-low-name = Few food groups
rule-diversity-low-why = Few food groups yesterday{ $groups ->
        [none] { "" }
       *[other] : { $groups } of 8
    }{ $least ->
        [none] { "" }
       *[other] , hoped for at least { $least }
    }.
rule-diversity-low-explain = From 8 months, under 5 of 8 food groups the day before: 2 or fewer within 14 days, 3 or 4 at the next visit, within 14 days if it was so before. Source: minimum dietary diversity, WHO and UNICEF 2021 (from memory); its use for one child is our own choice.
rule-diversity-low-do = Add one group that the family already has.

rule-iron-none-name = No iron yesterday
rule-iron-none-why = No meat, fish or iron yesterday{ $held_before ->
        [none] { "" }
       *[other] , and not the time before
    }.
rule-iron-none-explain = From 7 months, no meat or fish and no iron drops, powder or iron-fortified food the day before: at the next visit, within 14 days if it was so before. Source: animal food every day, WHO 2023; the age is our own choice.
rule-iron-none-do = Fish powder, meat or liver in the pot. Ask the clinic about iron.

rule-animal-food-none-name = No animal food yesterday
rule-animal-food-none-why = No egg, fish, meat or milk product yesterday.
rule-animal-food-none-explain = From 8 months, none of egg, fish, meat or milk product the day before: at the next visit. Source: WHO 2023.
rule-animal-food-none-do = Egg, fish, milk or meat: one of them every day if the family can.

rule-veg-fruit-none-name = No fruit or vegetable yesterday
rule-veg-fruit-none-why = No fruit and no vegetable yesterday.
rule-veg-fruit-none-explain = From 7 months, neither fruit nor vegetable the day before: at the next visit. Source: indicator of no fruit or vegetable, WHO and UNICEF 2021 (from memory).
rule-veg-fruit-none-do = Pumpkin, mango or leaves in the pot.

rule-drink-sweet-name = Sweet drink
rule-drink-sweet-why = A sweet drink yesterday.
rule-drink-sweet-explain = A sweet drink the day before: under 6 months within 14 days, later at the next visit. Source: WHO 2023 (from memory).
rule-drink-sweet-do = Water after 6 months and breast milk are best. Sweet drinks fill the stomach and harm teeth.

rule-bottle-used-name = Bottle with a teat
rule-bottle-used-why = A bottle with a teat yesterday.
rule-bottle-used-explain = A bottle with a teat the day before: under 6 months within 14 days, later at the next visit. Source: bottle feeding indicator, WHO and UNICEF 2021; open cup: a 2011 review in Maternal and Child Nutrition.
rule-bottle-used-do = An open cup is easier to clean. Where a bottle is needed: boil it each time. No shaming.

rule-food-honey-name = Honey before 12 months
rule-food-honey-why = Honey before 12 months{ $date ->
        [none] { "" }
       *[other] , { $date }
    }{ $signs ->
        [none] { "" }
       *[other] : { $signs }
    }.
rule-food-honey-explain = Honey before 12 months: within 7 days. Hard stools, weak cry, floppy, weak suck or hanging eyelids at such a visit or up to 30 days after one: today. Source: common practice; signs of infant botulism come 3 to 30 days later (a public health page read).
rule-food-honey-do = Stop honey. For 30 days watch for hard stools, weak cry, floppiness, weak sucking, hanging eyelids: any of them, to the clinic the same day.

rule-food-choking-name = Food that can choke
rule-food-choking-why = A food in a form that can choke{ $foods ->
        [none] { "" }
       *[other] : { $foods }
    }.
rule-food-choking-explain = A food that can choke was given in an unsafe form. Within 14 days. Common practice.
rule-food-choking-do = Show the safe form: paste or powder of nuts, grated or soft-cooked pieces, no bones. Sit upright, stay with the baby.

rule-food-low-value-name = Tea, salt or sugar
rule-food-low-value-why = Given yesterday{ $signs ->
        [none] { "" }
       *[other] : { $signs }
    }{ $foods ->
        [none] { "" }
       *[other] : { $foods }
    }.
rule-food-low-value-explain = Tea or coffee up to 23 months; added salt or sugar before 12 months. At the next visit. Common practice.
rule-food-low-value-do = Tea takes the iron from the food. Cook without salt and sugar for the baby and take the baby’s part out first.

rule-food-local-wait-name = Food before the local age
rule-food-local-wait-why = A food before its local waiting age{ $foods ->
        [none] { "" }
       *[other] : { $foods }
    }.
rule-food-local-wait-explain = The programme asks to wait with this food until an age it has set. At the next visit. Source: local advice in the protocol file.
rule-food-local-wait-do = Tell the family the local advice and from which age the food is fine.

rule-breastfeeding-stopped-name = Breastfeeding stopped
rule-breastfeeding-stopped-why = Not breastfed yesterday, was before{ $age_months ->
        [none] { "" }
       *[other] , at { $age_months ->
            [one] { $age_months } month
           *[other] { $age_months } months
        }
    }.
rule-breastfeeding-stopped-explain = Not breastfed now, breastfed before, and no clinic’s plan: under 6 months within 2 days, to 11 months within 7, later at the next visit. Source: WHO 2023, breastfeeding to 2 years or more; the classes are our own choice.
rule-breastfeeding-stopped-do = Ask why, with care. Help to begin again if wanted; safe milk if not. The mother decides. Follow the HIV protocol where it applies.

rule-breastfeeding-trouble-name = Breastfeeding is difficult
rule-breastfeeding-trouble-why = Breastfeeding is difficult: pain, little milk or poor attachment.
rule-breastfeeding-trouble-explain = The mother tells of pain, little milk or poor attachment: under 6 months within 2 days, else within 7. Source: WHO 2023 under 6 months, IMCI (both from memory).
rule-breastfeeding-trouble-do = Watch a feed. Help with position and attachment, or bring somebody who can.

rule-appetite-poor-name = Refuses most food
rule-appetite-poor-why = Refuses most food{ $days ->
        [none] { "" }
       *[other] { " " }for { $days ->
            [one] { $days } day
           *[other] { $days } days
        }
    }.
rule-appetite-poor-explain = Refuses most food for 3 days or more: within 2 days if a growth follow-up is open, else within 7. Common practice.
rule-appetite-poor-do = Look for illness. Small soft meals, often, without forcing. Breast milk more often.

## Measuring and writing

rule-data-z-outside-name = Value that hardly occurs
rule-data-z-outside-why = A value that hardly occurs{ $waz ->
        [none] { "" }
       *[other] : weight for age { $waz }
    }{ $laz ->
        [none] { "" }
       *[other] : length for age { $laz }
    }{ $wlz ->
        [none] { "" }
       *[other] : weight for length { $wlz }
    }.
rule-data-z-outside-explain = Weight for age outside −6 to 5, length for age outside −6 to 6, weight for length outside −5 to 5, and not measured again. Very low: today, because it may be a child in danger; else within 2 days. Source: WHO 2006 limits; the classes are our own choice.
rule-data-z-outside-do = Measure again before leaving. Look at birth date, sex and units. If it is very low and cannot be measured again: look for danger signs and refer today.

rule-data-weight-jump-name = Weight jumped
rule-data-weight-jump-why = The weight jumped{ $weight_before ->
        [none] { "" }
       *[other] { " " }from { $weight_before }
    }{ $weight ->
        [none] { "" }
       *[other] { " " }to { $weight }
    }{ $interval_days ->
        [none] { "" }
       *[other] { " " }in { $interval_days ->
            [one] { $interval_days } day
           *[other] { $interval_days } days
        }
    }.
rule-data-weight-jump-explain = Weight for age changed by 2.00 or more within 61 days, or more than 100 g a day over 3 days or more, and not weighed again. Within 2 days. Our own choice.
rule-data-weight-jump-do = Weigh again: right child, clothes off, scale at zero, digits in order? If it is the same, tick that you weighed again.

rule-data-length-shrunk-name = Length got shorter
rule-data-length-shrunk-why = The length got shorter{ $length_before ->
        [none] { "" }
       *[other] : from { $length_before }
    }{ $length ->
        [none] { "" }
       *[other] { " " }to { $length }
    }.
rule-data-length-shrunk-explain = More than 0.7 cm shorter than before and not measured again. Within 14 days. Source: 0.7 cm from the WHO growth study 2004 (from memory); the class is our own choice.
rule-data-length-shrunk-do = Measure again with two people, legs straight, head to the board.

rule-data-length-jump-name = Length jumped
rule-data-length-jump-why = The length jumped{ $length_before ->
        [none] { "" }
       *[other] { " " }from { $length_before }
    }{ $length ->
        [none] { "" }
       *[other] { " " }to { $length }
    }{ $interval_days ->
        [none] { "" }
       *[other] { " " }in { $interval_days ->
            [one] { $interval_days } day
           *[other] { $interval_days } days
        }
    }.
rule-data-length-jump-explain = Length for age changed by 2.00 or more within 92 days and not measured again. Within 14 days. Our own choice.
rule-data-length-jump-do = Measure again with two people. Look at the record of last time too.

rule-data-age-problem-name = Birth facts do not fit
rule-data-age-problem-why = Birth date, weight and weeks of pregnancy do not fit together{ $birth_weight ->
        [none] { "" }
       *[other] : { $birth_weight }
    }{ $gestation_days ->
        [none] { "" }
       *[other] { " " }after { $gestation_days }
    }.
rule-data-age-problem-explain = Facts of birth that contradict each other, for example before 28 weeks with more than 2,500 g. Within 7 days. Our own choice.
rule-data-age-problem-do = Look at the health card together and correct the record.

rule-data-twin-record-name = Perhaps recorded twice
rule-data-twin-record-why = This may be the same child, or the same visit, twice.
rule-data-twin-record-explain = A second home or clinic visit on one day, or a child of the same village, birth date and similar name. Within 7 days. Our own choice.
rule-data-twin-record-do = Compare both. Say that they are different, or tell your supervisor which one is too many. Twins are two children.

rule-data-same-again-name = Same weight three times
rule-data-same-again-why = The same weight three times{ $weight ->
        [none] { "" }
       *[other] : { $weight }
    }.
rule-data-same-again-explain = The same weight, to 10 g, as at the last two weighings, under 12 months and not weighed again. Within 14 days. Our own choice.
rule-data-same-again-do = Was it weighed this time? Weigh again and write what the scale shows.

rule-data-conflict-name = Answers that do not fit
rule-data-conflict-why = Two answers do not fit together{ $foods ->
        [none] { "" }
       *[other] : { $foods }
    }.
rule-data-conflict-explain = No solid food but meals; only breast milk but another food; or a texture although food has not begun. Within 7 days. Our own choice.
rule-data-conflict-do = Ask again and correct what was written.

rule-measure-missing-name = Not weighed twice
rule-measure-missing-why = No weight at this visit nor the one before.
rule-measure-missing-explain = No weight today nor at the latest home or clinic visit before. Within 14 days. Our own choice.
rule-measure-missing-do = Bring the scale, or agree a day at the clinic.

## Visits

rule-visit-overdue-name = Visit is late
rule-visit-overdue-why = The visit is late{ $days ->
        [none] { "" }
       *[other] { " " }by { $days ->
            [one] { $days } day
           *[other] { $days } days
        }
    }{ $date ->
        [none] { "" }
       *[other] : it was to be by { $date }
    }.
rule-visit-overdue-explain = The time for an expected visit has passed without one. Schedule: common practice; the days before and after are our own choice. The programme may change both.
rule-visit-overdue-do = Visit the home, or write why not.

rule-visit-lost-name = Not seen for long
rule-visit-lost-why = Not seen for long{ $days ->
        [none] { "" }
       *[other] : { $days ->
            [one] { $days } day
           *[other] { $days } days
        }
    }{ $date ->
        [none] { "" }
       *[other] , last on { $date }
    }.
rule-visit-lost-explain = No visit for 60 days under 12 months, 90 days from then on. Our own choice.
rule-visit-lost-do = Ask neighbours and the clinic. Has the family moved? Write what you learn.

rule-referral-no-outcome-name = Referred, outcome not known
rule-referral-no-outcome-why = Referred{ $date ->
        [none] { "" }
       *[other] { " " }on { $date }
    }, outcome not known yet{ $days ->
        [none] { "" }
       *[other] , { $days ->
            [one] { $days } day
           *[other] { $days } days
        } over
    }.
rule-referral-no-outcome-explain = An urgent follow-up or a referral without an outcome: 2 days after an urgent one, 7 days after others. Our own choice.
rule-referral-no-outcome-do = Ask the family or the clinic what became of it, and write it down.
