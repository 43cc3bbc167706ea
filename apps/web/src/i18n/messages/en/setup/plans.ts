/** What programs are planned by. */
export const plans = {
  'setup.plans.title': 'What programs are planned by',
  'setup.plans.note':
    'Every plan is the cheapest by these prices: thirst costs more than waste, waste more than key presses. What a zone lacks beyond a quarter of its need counts double, beyond half of it eight times.',
  'setup.plans.waterFrom': 'Watering may begin at',
  'setup.plans.waterUntil': 'and has to end by',
  'setup.plans.thirst': 'Price of water that plants go without',
  'setup.plans.thirst.how': 'Beside the price of wasted water: 3 and 1 say that a gallon too little is as bad as three too many.',
  'setup.plans.waste': 'Price of water that is wasted',
  'setup.plans.keyPress': 'Water that one key press may save at least',
  'setup.plans.keyPress.how': 'A value changed on the controller is worth as much wasted water a month.',
  'setup.plans.watering': 'Water that one watering less of a zone is worth',
  'setup.plans.watering.how': 'Keep it small: it only makes zones be watered deep and seldom where all else is equal.',
  'setup.plans.noTime': 'Give a time of day.',
  'setup.plans.thirstFirst': 'Thirst must cost at least as much as waste, else plans would let plants dry.',
  'setup.plans.save': 'Save what plans go by',
};
